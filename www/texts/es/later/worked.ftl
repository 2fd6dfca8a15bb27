### El ejemplo resuelto: las palabras del propio narrador.

narrator-title = Ejemplo resuelto
narrator-begin = Mira cómo se hace en esta mesa. Todo es real: las clavijas, la tira, los espacios en blanco.
narrator-pause = Pausa
narrator-go_on = Seguir
narrator-next = Paso siguiente
narrator-faster = Más rápido
narrator-speed = { $n } veces más rápido
narrator-stop = Detener y probar tú
narrator-now_you = Ahora tú
narrator-ended = Eso era todo.
narrator-ended_why = La misma mesa te espera, con otro corazón.
worked-waiting = El papel corre: faltan { $s }.
