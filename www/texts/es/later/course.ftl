### Una tarea dentro de un sitio de curso.

course-title = Sitio del curso
course-finish = Terminar y entregar
course-none = No se encontró ningún sitio de curso alrededor de esta página. El intento se guarda en este dispositivo.
course-kept = Guardado aquí y en el sitio del curso.
course-long = Este intento es ya demasiado largo para el sitio del curso. Este dispositivo lo guarda entero; el sitio, lo de antes.
course-long_nowhere = Este intento es ya demasiado largo para el sitio del curso, y este dispositivo no guarda nada. Comprueba pronto tu lectura: el resultado y la puntuación aún se entregan.
course-refused = El sitio del curso no tomó el último paso. Este dispositivo lo guarda.
course-lost = Ni el sitio del curso ni este dispositivo tomaron el último paso. Entrega en su lugar el archivo de resultado, debajo del balance.
course-ended = El resultado está en el sitio del curso. Esta ventana se puede cerrar.
course-suspended = El intento está en el sitio del curso y sigue donde lo dejaste. Esta ventana se puede cerrar.
course-other = El intento que guarda el sitio del curso es de otra versión de esta tarea. Empieza uno nuevo.
