### Lo que pasa detrás de las puertas de la primera pantalla, en medio minuto.

glimpse-title = Vista de 30 segundos: { $door }
glimpse-hold = Pausa
glimpse-play = Continuar
glimpse-again = Otra vez
glimpse-back = El dibujo anterior
glimpse-on = El dibujo siguiente
glimpse-close = Cerrar
glimpse-place = { $n } de { $of }

glimpse-rehearse-1 = Pon cada cable en su conector. La luz indicadora se enciende.
glimpse-rehearse-2 = Pon el sensor en la yema del dedo, y la correa alrededor.
glimpse-rehearse-3 = Cambia el rango hasta que el pulso llene la pantalla.
glimpse-rehearse-4 = Desenchufa el cargador, y el zumbido desaparece.
glimpse-rehearse-5 = Cuenta de A a B, latido a latido. Calcula la frecuencia cardíaca.

glimpse-check-1 = Algo falla. No se te dice qué.
glimpse-check-2 = Golpea, cambia una cosa, mira. Prueba cada una de tus ideas.
glimpse-check-3 = Graba una parte limpia. Pon una ventana de conteo.
glimpse-check-4 = Escribe tú N, T, el multiplicador y la frecuencia cardíaca.
glimpse-check-5 = Ves el primer paso que falló, no solo el número.

glimpse-assign-1 = Elige qué falla y hasta qué punto.
glimpse-assign-2 = Mira lo que encontrará un estudiante.
glimpse-assign-3 = Mira cuántas respuestas correctas suspenderían con tus límites.
glimpse-assign-4 = Un enlace para todos, y otro corazón para cada estudiante.
glimpse-assign-5 = Después: quién está listo y quién aún no.
