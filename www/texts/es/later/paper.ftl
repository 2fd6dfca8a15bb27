### Lo que va en papel.

paper-title = En papel
paper-lede = Hojas de «{ $title }», el último escenario que asignaste en este dispositivo. Elígelas, míralas, imprímelas.
paper-handout = Hoja para repartir
paper-worksheet = Hoja de trabajo
paper-station = Lista del puesto
paper-key = Hoja del docente
paper-print = Imprimir
paper-change = Cambiar el escenario
paper-foot = Para enseñar, no para diagnosticar. Sigue antes las normas de seguridad locales y las de tu institución.

paper-scan = Escanea el cuadro, o abre el enlace de tu docente.
paper-points = Cómo se dan los puntos
paper-how = Qué hacer
paper-how_open = Abre el enlace. No necesitas una cuenta. Nada sale de tu dispositivo si no lo entregas.
paper-how_code = Escribe tu ID de estudiante.
paper-how_tries = { $n ->
    [one] Tienes un intento.
   *[other] Tienes { $n } intentos.
    }
paper-how_hand = Al terminar, guarda el archivo de resultado o copia el código de resultado. Entrégalo como te dijeron.
paper-code = Mi ID de estudiante
paper-due = Entregar antes de

paper-name = Nombre
paper-partner = Pareja
paper-date = Fecha
paper-station_no = Puesto
paper-settings = Cómo estaba el registrador
paper-range = Rango, ± mV
paper-base = Base de tiempo, s por pantalla
paper-rate = Muestras por segundo
paper-finger = Mano y dedo
paper-strip = El trazo
paper-grid = Dibuja o pega aquí el trazo. Escribe al lado el tiempo y la altura de un cuadro. Marca A, B y los picos.
paper-reading = Lo que leíste
paper-work = Muestra cómo lo calculaste:
paper-found = Qué fallaba y qué hiciste
paper-saw = Qué mostraba el trazo
paper-did = Qué cambiaste, una cosa cada vez
paper-then = Qué hizo entonces el trazo
paper-seen_by = Visto por

paper-power_line = Para corriente de { $volts } V, { $hz } Hz
paper-by = Revisado por
paper-before = Antes de la clase
paper-before_cable = Todos los cables y clavijas están enteros: sin hilos al aire, sin grietas, sin patillas sueltas. Retira lo dañado y avisa.
paper-before_unit = El registrador está conectado a la regleta, y la regleta al enchufe de pared. La luz indicadora del registrador está encendida.
paper-before_seen = El cable de datos está en la computadora, y el programa ve el registrador.
paper-before_input = El sensor está en la entrada que el programa muestra.
paper-before_sensor = El sensor y la correa están limpios y secos. La correa cierra bien.
paper-before_away = Cargador, teléfono y lámpara de mesa están a medio metro o más del cable del sensor.
paper-before_strip = El cable del sensor no pasa junto a la regleta. Ningún cable está donde pasa la gente. No hay bebidas en la mesa.
paper-before_set = El rango y la base de tiempo son los de la hoja de trabajo.
paper-before_try = Hoy se vio aquí un buen trazo. El pulso llena un tercio de la pantalla o más, sin ruido ni picos planos.
paper-before_spare = Hay a mano un sensor y una correa de repuesto.
paper-pair = Con cada pareja
paper-pair_ask = A quien lleva el sensor se le preguntó y dijo que sí. Puede parar cuando quiera, sin dar razones.
paper-pair_finger = El dedo está caliente, sin anillo y sin herida.
paper-pair_loosen = Si el dedo se duerme u oscurece, afloja la correa enseguida.
paper-pair_still = La mano descansa en la mesa durante la grabación.
paper-pair_uneven = Avisa a tu docente de un pulso desigual. Nadie en la sala dice qué significa.
paper-pair_stop = Quien se encuentre mal se sienta o se tumba. Llama a tu docente.
paper-end = Al final
paper-end_saved = La grabación está guardada donde quiere tu institución, sin nombres.
paper-end_clean = El sensor y la correa se limpian como dicen las normas de tu institución.
paper-end_off = El registrador está apagado, y los cables están recogidos.
paper-end_told = Lo que se rompió está anotado y avisado.

paper-key_about = Solo para docentes. No lo des a los estudiantes.
paper-key_none = En este escenario no falla nada.
paper-key_severity = Intensidad: { $v } %.
paper-key_severities = Intensidad: de { $low } a { $high } %, distinta para cada estudiante.
paper-key_misreadings = Tus propios errores de lectura
paper-key_misreading = { $field } = { $formula }: { $words }
paper-key_reading = La lectura
paper-key_own = Cada estudiante tiene su propio corazón. El recuento se juzga en su propia ventana de conteo.
paper-key_edge = Un latido sobre un cursor puede contarse o no. Un latido más o menos en { $s } s son { $v } latidos/min.
paper-key_true = Las frecuencias cardíacas verdaderas, con semillas e intensidades, vienen en la clave de respuestas de «Resultados de la clase». Necesita tu contraseña.
