### La página de inicio: caminos, estantería, intentos guardados, advertencias.

### Glosario del español de esta página (trato: tú; español neutro, válido en España y en América):
###   bench mesa · recorder unit unidad de registro (unidad) · computer computadora · laptop portátil · power strip regleta
###   charger cargador · mains lead cable de alimentación · data lead cable de datos · finger pad sensor (de dedo; almohadilla de presión)
###   pad lead cable del sensor · plug clavija · outlet enchufe · socket conector · input entrada · calibrator calibrador
###   strap correa (floja, ajustada, apretada) · pulp yema · slack holgura · lamp of a device luz · switch interruptor
###   strip tira · trace trazo · stylus estilete · drum tambor · take, recording registro · record registrar
###   live en vivo · hold pausa · time base base de tiempo · full-scale range rango a fondo de escala · zero cero
###   polarity polaridad · sampling rate frecuencia de muestreo · low-pass paso bajo · high-pass paso alto
###   mains notch filtro de red (rechaza banda) · anti-alias antialias · cursor cursor A/B · interval intervalo
###   beat mark marca de latido · count recuento · window ventana · rate frecuencia cardíaca (latidos/min)
###   foot pie · peak pico · notch incisura dícrota · bump segunda onda, onda dícrota · hum zumbido · fuzz ruido (fino)
###   teeth dientes · ripple rizado · spike espiga · step escalón · drop-out corte · swing vaivén · drift deriva
###   motion movimiento · clipping recorte · scenario escenario · fault avería · look-alike avería parecida
###   seed semilla · attempt intento · worksheet hoja de trabajo · debrief balance · rubric rúbrica · readiness preparación (ready: a punto)
###   subject sujeto · instructor docente · licensed clinician profesional de la salud habilitado

app-title = Dicrotic: una mesa de prácticas para el pulso del dedo

skip-main = Ir a la mesa

where-title = { $title } · Dicrotic
where-seed = semilla { $v }

tools-scenarios = Escenarios
tools-open = Abrir un registro
tools-faults = Averías y pruebas
tools-language = Idioma
tools-theme = Oscuro o claro

caution-title = Para enseñar, no para diagnosticar
caution-short = Para enseñar, no para diagnosticar. En una mesa real sigue las normas locales, las reglas de tu institución y las indicaciones de los docentes y profesionales de la salud habilitados que respondan de ella.
caution-long = Aquí el sujeto es simulado, y nada de esta página dice algo sobre la salud de nadie. Antes de poner un sensor a una persona, sigue las normas locales y las reglas de tu institución, y pregunta a tu docente. Si un trazo te preocupa, consulta a un profesional de la salud habilitado.

start-title = Ensaya el pulso del dedo
start-lede = Conecta el equipo, registra un pulso limpio, cuenta los latidos y compara tu frecuencia con la verdadera, que la mesa conoce y tú no.
start-all = Todos los escenarios

way-kept = Sigue donde estabas
way-kept_from = semilla { $seed }, { $when }
way-rehearse = Ensaya
way-rehearse_for = antes de la práctica, veinte minutos
way-rehearse_text = Una mesa en piezas: móntala, pon el sensor, ajusta la tira, registra, cuenta. Se mira cada paso.
way-rehearse_go = Empezar con «{ $title }»
way-glimpse = Vista de 30 segundos
way-check = Ponte a prueba
way-check_for = cinco minutos, una y otra vez
way-check_text = Una mesa a la que le pasa algo y un corazón que aún no conoces. El balance llega después de tu lectura.
way-check_go = Tomar la próxima mesa
way-assign = Proponla a una clase
way-assign_for = diez minutos, para docentes
way-assign_text = Monta una mesa con las averías que quieras, prueba si su evaluación es justa, comparte un enlace y mira quién está a punto.
way-assign_go = Preparar una mesa
way-assign_class = Resultados de la clase

hero-foot = pie
hero-peak = pico, uno en cada latido
hero-notch = incisura
hero-bump = la segunda onda:|no se cuenta

start-help-guided = con guía
start-help-alone = por tu cuenta
start-levels = Nivel { $v }
start-find = Buscar una palabra
start-found_none = Ningún escenario tiene «{ $word }» en su título o su objetivo.
start-faults_title = ¿Qué puede fallar en la mesa?
start-faults = Un fichero de averías ordenado por la primera impresión; cada ficha trae la prueba que la distingue de las parecidas.
start-faults_go = Abrir el fichero
start-own_title = ¿Tienes algo real que leer?
start-own = Un registro tuyo (un archivo CSV con un tiempo y un valor en cada línea) se puede abrir en la tira, medir y contar. No sale de este dispositivo.

whether-close_title = La última comprobación
whether-close_text = Esta comprobación cierra el intento. Después se muestra la respuesta y ya no se puede cambiar nada.
whether-close_yes = Comprobar y cerrar
whether-close_no = Todavía no
whether-reveal_title = ¿Mostrar la respuesta?
whether-reveal_text = Esto cierra el intento. No cuenta como listo, y pierdes la segunda comprobación.
whether-reveal_yes = Mostrar y cerrar
whether-reveal_no = Todavía no
resume-title = Ya has estado aquí
resume-text = En este dispositivo hay guardado un intento con esta semilla, de { $when }. ¿Seguir con él?
resume-yes = Seguir con él
resume-no = Empezar de nuevo
resume-now = hace un momento
resume-minutes = { $n ->
    [one] hace un minuto
   *[other] hace { $n } minutos
}
resume-hours = { $n ->
    [one] hace una hora
   *[other] hace { $n } horas
}
resume-days = { $n ->
    [one] ayer
   *[other] hace { $n } días
}

pane-title = Partes de la página
pane-bench = Mesa
pane-strip = Tira
pane-sheet = Hoja

ask-title = Pide al sujeto que
ask-do = Pedir
ask-done = Lo pides y el sujeto asiente.
ask-rest = se siente y descanse
ask-deep_breath = respire hondo una vez
ask-paced_breathing = respire 6 veces por minuto
ask-breath_hold = contenga la respiración
ask-stand_up = se ponga de pie
ask-sit_down = se siente
ask-exercise = suba y baje un escalón un minuto
ask-talk = cuente una historia
ask-laugh = se ría
ask-grip = apriete con la otra mano
ask-cold_other_hand = meta la otra mano en agua fresca
ask-ice_water = meta la otra mano en agua helada (solo simulado)
ask-valsalva = haga fuerza con la boca cerrada (solo simulado)
ask-face_immersion = meta la cara en agua fría (solo simulado)
ask-caution = Solo simulado: no es para una persona en clase. Puede provocar desmayos y frenar el corazón de forma peligrosa. Si puede hacerse o no, lo deciden las normas locales, tu institución y los profesionales de la salud habilitados.

error-unknown = El núcleo comunicó algo inesperado ({ $code }).
error-cut_short = El archivo termina a la mitad: falta una parte. Pide al estudiante que lo guarde de nuevo.
error-no_result = No es un archivo de resultado, o le falta una parte. ({ $found })
error-version = Este archivo de resultado tiene la forma { $found }. Esta versión de Dicrotic lee la forma { $ours }.
error-code = { $found }
error-scenario_missing = Su mesa no está a mano: abre antes el archivo del escenario o pega el enlace.
error-other_bench = Es otra mesa que la encargada.
error-set_twice = La misma mesa ya está dada, con otros criterios ({ $other }). Da solo la que ha de juzgar. «Olvidarlo todo» empieza de nuevo.
error-too_long = Es más largo que cualquier resultado.
error-replay = No se puede reproducir: { $found }
error-core_stopped = La simulación se detuvo. Vuelve a cargar la página; el intento está guardado hasta la última acción. ({ $told })
error-scenario_invalid = No se puede leer un archivo de escenario: { $field } debería ser { $expected }, pero es { $found }.
error-csv_empty = { $file } no tiene ninguna línea con números.
error-csv_cell = { $file }, línea { $line }, columna { $column }: se esperaba { $expected }, se encontró «{ $found }».
error-csv_columns = { $file }, línea { $line }: se esperaban al menos { $expected } columnas, se encontraron { $found }.
error-csv_cells = { $file }, línea { $line }: se esperaban { $expected } columnas, como en las líneas de arriba, se encontraron { $found }. Puede que la coma sea a la vez decimal y separador.
error-csv_thousands = { $file }, línea { $line }: «{ $found }» puede ser un número decimal o de miles, porque «{ $other }» está en la misma columna. Escribe los números sin signo entre los miles.
error-csv_column_unknown = { $file } no tiene la columna «{ $found }».
error-csv_time_order = { $file }, línea { $line }: el tiempo debe crecer, pero a { $previous_s } s le sigue { $found_s } s.
error-csv_rate_missing = { $file } no tiene columna de tiempo, así que no se conoce su frecuencia de muestreo. Ayuda una primera columna con el tiempo en segundos.
error-csv_rate_range = { $file }: se esperaba una frecuencia de muestreo de { $low_hz } a { $high_hz } Hz, se encontró { $found_hz } Hz.
error-csv_length = { $file }: se esperaban de { $low } a { $high } muestras, se encontraron { $found }.
error-csv_gap = { $file }: pasan { $gap_s } s sin una línea, cuando lo habitual son { $usual_s } s. Corta el registro en el hueco y abre una parte.
error-csv_missing = { $file }: faltan { $found } de { $of } valores; puede faltar como mucho uno de cada { $limit_one_in }.
error-restore_invalid = No se puede leer el intento guardado: { $found }.
error-bad_value = { $field } debería ser { $expected }.
error-drawing_failed = No se puede dibujar la tira: { $found }.
error-no_canvas = Este navegador no ofrece un lienzo donde dibujar.
error-no_take = Ese registro no existe.
error-seed_invalid = La semilla de la dirección no se puede usar: { $found }.
error-not_found = Falta un archivo de esta página: { $what }.
error-no_scenario = Aquí no hay ningún escenario llamado «{ $id }». Elige uno de estos.
error-file_left = Lo que estaba abierto sigue abierto.
error-page = Algo falló en esta página; lo demás continúa. Casi siempre ayuda volver a cargarla. ({ $told })
