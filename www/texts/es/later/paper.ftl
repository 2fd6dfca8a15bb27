### Lo que va en papel.

paper-title = En papel
paper-lede = Hojas de «{ $title }», la última mesa que preparaste en este dispositivo. Elígelas, míralas, imprímelas.
paper-handout = Hoja para repartir
paper-worksheet = Hoja de trabajo
paper-station = Lista del puesto
paper-key = Clave
paper-print = Imprimir
paper-change = Cambiar la mesa
paper-foot = Para enseñar, no para diagnosticar. Las normas locales y las de tu institución van primero.

paper-scan = Escanea el cuadro o abre el enlace que te dio tu docente.
paper-points = Por qué se dan puntos
paper-how = Cómo hacerlo
paper-how_open = Abre el enlace. No hace falta cuenta, y nada sale de tu dispositivo si no lo entregas.
paper-how_code = Escribe tu código, el que tu docente conoce.
paper-how_tries = { $n ->
    [one] Tienes un intento.
   *[other] Tienes { $n } intentos.
    }
paper-how_hand = Al terminar, guarda el archivo de resultado o copia el código, y entrégalo como te dijeron.
paper-code = Mi código
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
paper-reading = Lo que se leyó
paper-work = Muestra cómo lo calculaste:
paper-found = Qué estaba mal y qué se hizo
paper-saw = Qué mostraba el trazo
paper-did = Qué cambiamos, una cosa cada vez
paper-then = Qué hizo entonces el trazo
paper-seen_by = Visto por

paper-mains = Para una red de { $volts } V, { $hz } Hz
paper-by = Revisado por
paper-before = Antes de la clase
paper-before_lead = Todos los cables y enchufes están enteros: ningún hilo al aire, ninguna grieta, ninguna patilla suelta. Lo que no, se retira y se avisa.
paper-before_unit = La unidad está en la regleta, la regleta en la pared, y la luz de la unidad encendida.
paper-before_seen = El cable de datos está en el ordenador, y el programa ve la unidad.
paper-before_input = El sensor está en la entrada que el programa muestra.
paper-before_sensor = El sensor y la correa están limpios y secos. La correa sujeta.
paper-before_away = Cargador, teléfono y lámpara están a medio metro o más del cable del sensor.
paper-before_strip = El cable del sensor no corre junto a la regleta. Ningún cable está donde se pisa; no hay bebidas en la mesa.
paper-before_set = El rango y la base de tiempo son los de la hoja de trabajo.
paper-before_try = Hoy se vio aquí un buen trazo: pulso de más de un tercio de la pantalla, sin pelusa, sin cimas planas.
paper-before_spare = Hay a mano un sensor y una correa de repuesto.
paper-pair = Con cada pareja
paper-pair_ask = A quien lleva el sensor se le preguntó y dijo que sí. Puede parar cuando quiera, sin dar razones.
paper-pair_finger = El dedo está tibio, sin anillo, sin herida ni dolor.
paper-pair_loosen = Una correa que duerme u oscurece el dedo se afloja enseguida.
paper-pair_still = La mano está en la mesa y descansa mientras corre el registro.
paper-pair_uneven = Un pulso irregular se le dice al docente. Nadie en la sala dice qué significa.
paper-pair_stop = Quien se encuentre mal se tumba o se sienta, y se llama al docente.
paper-end = Al final
paper-end_saved = El registro está guardado donde quiere tu institución, sin nombres.
paper-end_clean = El sensor y la correa se limpian como dicen las normas de tu institución.
paper-end_off = La unidad está apagada, los cables recogidos.
paper-end_told = Lo que estaba roto está escrito y avisado.

paper-key_about = Para quien enseña; no se reparte.
paper-key_none = Esta mesa no tiene nada mal.
paper-key_severity = Intensidad: { $v } %.
paper-key_severities = Intensidad: de { $low } a { $high } %, según el número del estudiante.
paper-key_misreadings = Tus propios errores de lectura
paper-key_misreading = { $field } = { $formula }: { $words }
paper-key_reading = La lectura
paper-key_own = La mesa de cada estudiante tiene su propio corazón. La cuenta se juzga en la ventana del estudiante.
paper-key_edge = Un latido sobre un cursor puede contarse o no. Un latido más o menos en { $s } s son { $v } latidos/min.
paper-key_true = Las frecuencias verdaderas, con semillas y gravedades, vienen en la clave de «Resultados de la clase», tras tu palabra.
