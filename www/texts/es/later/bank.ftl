### Un banco de preguntas: lo que se pregunta al estudiante, y la parte de la pantalla donde el docente lo prepara.

## En las preguntas, también las que hace la línea de comandos: aquí no hay elección entre formas

bank-item = { $title }: trazo { $n }
bank-question = ¿Cuál es la frecuencia cardíaca de A a B, en latidos/min? Cuenta los latidos cuyo punto más alto está entre A y B. Lee el tiempo de A a B. Después calcula la frecuencia cardíaca.
bank-alt = Un trazo del pulso de { $seconds } s. Una división de la cuadrícula de tiempo es de { $division } s. El cursor A está en { $a } s; el cursor B, en { $b } s.
bank-answer = { $rate } latidos/min
bank-right = Correcto: { $beats } latidos en { $seconds } s. { $beats } × 60 / { $seconds } = { $rate } latidos/min.
bank-ask-beats_missed = ¿Dónde hay entre dos picos cerca del doble de la distancia habitual?
bank-ask-one_too_few = ¿Contaste cada pico entre A y B? ¿Cuántos picos hacen un hueco?
bank-wrong = { $see } { $ask }

## En la pantalla

bank-title = Banco de preguntas
bank-about = Cada pregunta muestra un trazo limpio, pide la frecuencia cardíaca y tiene una sola respuesta correcta. Cada respuesta incorrecta viene de un error conocido y tiene su comentario. Los trazos se hacen para el banco. No son de ningún estudiante.
bank-from = Trazos de
bank-count = Número de preguntas
bank-seed = Semilla
bank-seed_about = La misma semilla da las mismas preguntas.
bank-form = Archivo
bank-form_qti = QTI 3, para un aula virtual
bank-form_csv = Tabla (CSV) con imágenes
bank-save = Guardar el banco de preguntas
bank-stop = Parar
bank-preview = La primera pregunta
bank-preview_making = Haciendo la primera pregunta…
bank-preview_right = correcta
bank-preview_feedback = Comentario: { $told }
bank-working = Pregunta { $done } de { $all }
bank-packing = Empaquetando…
bank-done = { $all ->
    [one] Guardada: 1 pregunta.
   *[other] Guardadas: { $all } preguntas.
    }
bank-stopped = Parado. No se guardó ningún archivo.
bank-count_bad = El número de preguntas debe ser un entero de 1 a { $most }.
bank-seed_bad = La semilla debe ser un entero de 0 a 18446744073709551615.

error-bank_unclear = Ninguna grabación de esta persona muestra un pulso lo bastante limpio para contarlo ({ $takes } intentos). Elige otros trazos.
error-bank_alike = Los errores conocidos dan casi la misma frecuencia cardíaca en todas las grabaciones de esta persona ({ $stills } intentos). Elige otros trazos.
error-bank_words = Un texto de la pregunta { $number } no se puede usar ({ $field }: { $found }; se esperaba { $expected }).
error-bank_full = Un banco de preguntas tiene como máximo { $most } preguntas.
error-bank_large = El banco de preguntas es demasiado grande para un solo archivo. Haz menos preguntas.
