### La vista detrás de una puerta de la primera pantalla: la página misma en un marco.

glimpse-title = Vista de 30 s: { $door }
glimpse-hold = Pausa
glimpse-play = Continuar
glimpse-again = Otra vez
glimpse-next = Paso siguiente
glimpse-close = Cerrar

glimpse-assign-1 = Elige qué falla y hasta qué punto.
glimpse-assign-2 = Mira el trazo que verá un estudiante.
glimpse-assign-3 = Mira cuántas respuestas correctas suspenderían con tus límites.
glimpse-assign-4 = Da un enlace a todos. Cada estudiante recibe otro corazón.
