### El ejemplo resuelto: las palabras del propio narrador.

narrator-title = Ejemplo resuelto
narrator-begin = Mira cómo se hace aquí. Todo es real: las clavijas, el trazo, los espacios en blanco.
narrator-pause = Parar el ejemplo
narrator-go_on = Continuar
narrator-next = Paso siguiente
narrator-faster = Más rápido
narrator-speed = { $n } veces más rápido
narrator-stop = Detener y hacerlo tú
narrator-now_you = Te toca a ti
narrator-ended = Ese era todo el ejemplo.
narrator-ended_why = El mismo equipo está listo para ti, con otro corazón.
worked-waiting = El trazo avanza: faltan { $s }.
