### El espacio de trabajo: sus vistas, los pasos del trabajo, la ficha de una pieza tocada, el camino de la señal.

view-title = Lo que se ve a la izquierda
view-brief = Tarea
view-bench = Mesa
view-list = Todas las piezas
view-name = Qué falla
view-result = Resultado

rewire = Conectar como la vez anterior
undo = Deshacer
undo-nothing = No hay nada que deshacer.

steps-title = Pasos del trabajo
steps-power = Corriente y cables
steps-sensor = Sensor
steps-adjust = Ajustar
steps-record = Grabar
steps-measure = Medir
steps-name = Nombrar el fallo
steps-check = Comprobar
steps-done = hecho
steps-open = sin hacer

next-nothing = Todos los pasos están hechos.
next-unknown = Sigue con el paso siguiente.
next-power_any = Da corriente al registrador y conéctalo. La computadora tiene que verlo.
next-power_recorder_end = Enchufa el cable de corriente en el registrador.
next-power_outlet_end = Enchufa el otro extremo del cable de corriente en la regleta.
next-power_recorder_switch = Enciende el registrador.
next-power_no_light = El registrador no tiene corriente. Sigue su cable y mira el interruptor de la regleta.
next-power_data_recorder = Enchufa el cable de datos en el registrador.
next-power_data_computer = Enchufa el otro extremo del cable de datos en la computadora.
next-power_sensor_cable = Enchufa el cable del sensor en la entrada 1 del registrador.
next-power_not_seen = La computadora no ve el registrador. Haz que lo busque otra vez.
next-sensor_on = Pon el sensor en la yema del dedo.
next-sensor_loose = La correa está floja. Toca la mano y ténsala.
next-sensor_tight = La correa está demasiado apretada. Toca la mano y aflójala.
next-sensor_place = Lleva el sensor a la yema del dedo.
next-sensor_side = Gira el lado sensible hacia la piel.
next-adjust_any = Consigue un pulso limpio que llene buena parte de la pantalla.
next-adjust_no_data = No llegan muestras. ¿Está todo conectado?
next-watched = Este es el ejemplo. Mira: no tienes que hacer nada.
next-adjust_flat = El trazo es plano. ¿Es la entrada correcta y toca el sensor la piel?
next-adjust_clipped = Hay partes altas o bajas recortadas. Elige un rango mayor.
next-adjust_small = El pulso es pequeño en la pantalla. Elige un rango menor.
next-adjust_tall = El pulso es demasiado alto para la pantalla. Elige un rango mayor.
next-adjust_noise = Hay ruido en el trazo. Busca de dónde viene.
next-adjust_restless = El trazo salta o se mueve. Espera, o pide al sujeto que no se mueva.
next-record = Graba el tiempo que pide la tarea.
next-record_on = Grabando. Detén la grabación cuando sea bastante larga.
next-measure_open = Elige una grabación encima del trazo.
next-measure_cursors = Lleva los cursores A y B a los extremos de una parte limpia.
next-measure_blanks = Cuenta los latidos de A a B y rellena los espacios en blanco.
next-sensor_caution = Lee la advertencia antes de poner el sensor.
next-adjust_wait = Espera hasta que haya varios latidos en la pantalla.
next-adjust_zero = El trazo está cerca del borde. Pulsa «Cero aquí» para llevarlo al centro.
next-kept_short = Esta grabación es corta. Graba otra vez.
next-kept_clipped = Hay partes altas o bajas recortadas en esta grabación. Elige un rango mayor y graba otra vez.
next-kept_small = El pulso de esta grabación es pequeño. Elige un rango menor y graba otra vez.
next-kept_tall = El pulso de esta grabación es demasiado alto. Elige un rango mayor y graba otra vez.
next-kept_noise = Hay ruido en esta parte. Busca de dónde viene y graba otra vez.
next-kept_restless = El trazo salta o se mueve aquí. Elige otra parte, o graba otra vez.
next-measure_foot_and_peak = Pon A en el pie y B en el pico de un mismo latido.
next-measure_beat_to_beat = Pon A y B en el mismo rasgo de dos latidos: pico y pico, o pie y pie.
next-measure_height = Lee los valores en A y B y rellena los espacios en blanco.
next-measure_intervals = Cuenta los intervalos entre latidos de A a B y rellena los espacios en blanco.
next-name = Nombra lo que falla, si algo falla.
next-check = Comprueba tu lectura.
next-check_again = Corrige lo que señala el resultado y comprueba otra vez.
next-closed = Este intento está cerrado. Prueba otra vez con una semilla nueva.

card-close = Cerrar
card-look = Mirar de cerca
card-wiggle = Menear la clavija
card-plug_into = Enchufar en
card-sensor = Sensor

drag-wrong_shape = { $socket }: la forma no encaja

bench-close_up = Mirar
bench-close_up-whole = todo
bench-close_up-recorder = registrador
bench-close_up-finger = dedo

path-title = El camino de la señal
path-sensor = Sensor
path-amplifier = Amplificador
path-filters = Filtros
path-converter = Conversor
path-screen = Pantalla

strip-take_short = Grabación { $v }
strip-record_for = Grabar { $s } s y parar
strip-elapsed_of = { $s } de { $all }
cursor-drag = arrastra
marks-undo = Deshacer
measure-more = Más
measure-a = A (s)
measure-b = B (s)
measure-between = De A a B
measure-marked = Marcas
measure-closer = Ampliar
axis-range = Rango
axis-time_base = Base de tiempo
axis-zero = Cero aquí
says-title = Lo que ves y oyes
