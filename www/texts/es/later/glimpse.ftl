### Lo que pasa detrás de las puertas de la primera pantalla, en medio minuto.

glimpse-title = Medio minuto: { $door }
glimpse-hold = Pausa
glimpse-play = Seguir
glimpse-again = Otra vez
glimpse-back = El dibujo anterior
glimpse-on = El dibujo siguiente
glimpse-close = Cerrar
glimpse-place = { $n } de { $of }

glimpse-rehearse-1 = Cada cable encuentra su conector; la luz lo dice.
glimpse-rehearse-2 = El sensor va bajo la yema del dedo, y la correa alrededor.
glimpse-rehearse-3 = El rango se cambia hasta que el pulso llena la tira.
glimpse-rehearse-4 = Se aparta el cargador, y con él se va el zumbido.
glimpse-rehearse-5 = De A a B, latido a latido, hasta una frecuencia.

glimpse-check-1 = A esta mesa le pasa algo. No se te dice qué.
glimpse-check-2 = Un golpecito, un cambio, una mirada: una prueba para cada sospecha.
glimpse-check-3 = Se registra un tramo limpio y se marca una ventana.
glimpse-check-4 = N, T, el multiplicador y la frecuencia, de tu propia mano.
glimpse-check-5 = Se muestra el primer paso que falló, no solo el número.

glimpse-assign-1 = Elige qué falla y hasta qué punto.
glimpse-assign-2 = Mira lo que encontrará un estudiante.
glimpse-assign-3 = Mira cuántas respuestas correctas suspendería una tolerancia.
glimpse-assign-4 = Un enlace para todos y un corazón para cada uno.
glimpse-assign-5 = El lunes: quién está a punto y quién todavía no.
