### La pregunta antes de una prueba que es parte de un estudio de una clase.

study-title = ¿Podemos usar tus resultados?
study-about = Tu clase participa en un estudio. Pregunta si practicar en esta página ayuda a aprender.
study-what = Si dices que sí, los puntos de tus pruebas van a una tabla. La tabla no tiene nombres ni ID de estudiante. Otras personas la pueden leer.
study-free = Puedes decir que no. La prueba se abre igual, y tus puntos son los mismos.
study-later = Puedes cambiar de opinión. Díselo a tu docente, y tus puntos se quitan.
study-seen = Tu respuesta está en tu resultado. Tu docente la puede ver.
study-yes = Sí, usen mis resultados
study-no = No, no los usen

### Las preguntas de una clase.

items-title = Por fallo: qué fue fácil, qué fue difícil
items-about = Una fila por cada fallo de cada escenario. La discriminación pasa de 0 si quienes hacen bien el resto aciertan aquí más a menudo. Con menos de 30 respuestas dice poco.
items-item = Fallo y escenario
items-answers = Respuestas
items-right = Correctas en la primera comprobación
items-discrimination = Discriminación
items-misreading = Error de lectura más frecuente
items-minutes = Mediana de minutos
items-nothing = No hay nada mal
items-percent = { $n } %
items-often = { $name } ({ $n })
