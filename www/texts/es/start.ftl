### La página de inicio: caminos, estantería, intentos guardados, advertencias.

### El español de esta página: trato de tú; español neutro, válido en España y en América; una palabra para cada cosa.
### La prueba de las palabras (tests/browser/words.test.mjs) las comprueba.
###   recorder registrador · sensor sensor · sensing side lado sensible · sensor cable cable del sensor
###   data cable cable de datos · power cord cable de corriente · plug clavija · socket conector · outlet enchufe
###   power strip regleta · power line red eléctrica · power-line hum zumbido de la red · ground tierra
###   charger cargador · laptop portátil · computer computadora · phone teléfono · switch interruptor
###   indicator light luz indicadora · desk lamp lámpara de mesa · strap correa (floja, ajustada, apretada; tensar, aflojar) · press presionar · wiggle menear · fingertip yema
###   trace trazo · screen pantalla · to record grabar · recording grabación · live en vivo · Pause Pausa
###   time base base de tiempo · full-scale range rango a fondo de escala · zero cero · invert invertir
###   sampling rate frecuencia de muestreo · low-pass filter filtro de paso bajo · high-pass filter filtro de paso alto
###   notch filter filtro de banda estrecha · anti-alias filter filtro antialias · converter conversor
###   foot pie · peak pico · dicrotic notch incisura dícrota · second bump segunda onda · spike espiga · jump salto
###   noise ruido · hum zumbido · drift deriva · clipping recorte
###   cursor cursor A/B · A to B de A a B · beat interval intervalo entre latidos · counting window ventana de conteo
###   beat mark marca de latido · count recuento · heart rate frecuencia cardíaca · uncertainty incertidumbre
###   scenario escenario · bench mesa (solo la mesa con el equipo) · equipment equipo · attempt intento · test prueba
###   fault fallo · similar fault fallo parecido · fix arreglar, arreglo · misreading error de lectura · hint pista
###   worksheet hoja de trabajo · result (after a check) resultado · assignment asignación · task tarea · course site aula virtual · correct correcto · borderline al límite · not done sin hacer
###   rubric rúbrica · ready listo · submit entregar · keep guardar · delete borrar · again otra vez · continue continuar
###   student ID ID de estudiante · result code código de resultado · password contraseña · safety rules normas de seguridad
###   browser tab pestaña · seed semilla · subject sujeto · instructor docente
###   licensed clinician profesional de la salud habilitado

app-title = Dicrotic: una mesa de prácticas para el pulso del dedo

skip-main = Ir al escenario

where-title = { $title } · Dicrotic
where-seed = semilla { $v }

tools-scenarios = Escenarios
tools-open = Abrir un archivo
tools-own = Tu propio pulso
tools-faults = Fallos y pruebas
tools-language = Idioma
tools-theme = Tema
theme-light = Claro
theme-dark = Oscuro

caution-title = Para enseñar, no para diagnosticar
caution-short = Para enseñar, no para diagnosticar. Con equipos reales, sigue las normas de seguridad locales y las de tu institución. Sigue también las indicaciones de los profesionales de la salud habilitados y de los docentes responsables.
caution-long = Aquí el sujeto es simulado. Esta página no dice nada sobre la salud de nadie. Antes de poner un sensor a una persona, pregunta a tu docente. Sigue las normas de seguridad locales y las de tu institución. Si un trazo te preocupa, consulta a un profesional de la salud habilitado.

start-title = Practica el pulso del dedo
start-lede = Practica en pantalla para el laboratorio de fisiología: conecta el equipo, graba un pulso limpio y cuenta los latidos. Después ves la frecuencia cardíaca verdadera.
start-pulse = Llevas contigo un pulso de verdad:
start-pulse_go = mide tu propio pulso
start-all = Todos los escenarios
start-single = Un solo fallo cada vez
start-single_about = En estos escenarios el título dice lo que verás, y el fallo es siempre el mismo. Son para docentes y para practicar una sola habilidad.

tools-menu = Menú
way-kept = Continúa donde lo dejaste
way-kept_over = Último intento (cerrado)
way-kept_from = semilla { $seed }, { $when }
way-kept_from_over = semilla { $seed }, { $when }, cerrado
way-rehearse = Antes del laboratorio
way-rehearse_for = Estudiantes: 20 minutos
way-rehearse_text = Conecta el equipo, ajusta el trazo, graba y cuenta los latidos. Se comprueba cada paso.
way-rehearse_go = Empezar con «{ $title }»
way-glimpse = Vista de 30 s
way-check = Autoevaluación rápida
way-check_for = Estudiantes: 5 minutos
way-check_text = Algo falla en el equipo. Encuéntralo y lee una frecuencia cardíaca que es nueva para ti.
way-check_go = Empezar la autoevaluación
way-assign = Para tu clase
way-assign_for = Docentes: 10 minutos
way-assign_text = Elige los fallos, mira si la evaluación es justa y reparte un enlace. Después, mira quién está listo.
way-assign_go = Asignar un escenario
way-assign_class = Resultados de la clase
way-assign_guide = Guía

hero-foot = pie
hero-peak = pico, uno en cada latido
hero-notch = la incisura dícrota
hero-bump = la segunda onda:|no se cuenta

start-help-guided = con guía
start-help-alone = por tu cuenta
start-levels = Nivel { $v }
start-find = Buscar una palabra
start-found_none = Ningún escenario tiene «{ $word }» en su título o su objetivo.
start-faults_title = ¿Qué puede fallar?
start-faults = Una lista de fallos, ordenada por lo que ves primero. Cada fallo trae la prueba que lo distingue de fallos parecidos.
start-faults_go = Abrir la lista de fallos
start-own_title = ¿Tienes una grabación propia?
start-own = Ábrela aquí. Sirve un archivo CSV con un tiempo y un valor en cada línea. La puedes medir y contar sus latidos. No sale de este dispositivo.

whether-close_title = La última comprobación
whether-close_text = Esta comprobación cierra el intento. Después ves la respuesta y ya no puedes cambiar nada.
whether-close_yes = Comprobar y cerrar
whether-close_no = Todavía no
whether-reveal_title = ¿Mostrar la respuesta?
whether-reveal_text = Esto cierra el intento. No cuenta como listo, y pierdes la segunda comprobación.
whether-reveal_yes = Mostrar y cerrar
whether-reveal_no = Todavía no
resume-title = Ya has estado aquí
resume-text = En este dispositivo hay guardado un intento con esta semilla, de { $when }. ¿Quieres continuarlo?
resume-yes = Continuarlo
resume-no = Empezar otra vez
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


ask-title = Pide al sujeto que
ask-do = Pedir
ask-done = Lo pides y el sujeto asiente.
ask-rest = se siente y descanse
ask-deep_breath = respire hondo una vez
ask-paced_breathing = respire 6 veces por minuto
ask-breath_hold = contenga la respiración
ask-stand_up = se ponga de pie
ask-sit_down = se siente
ask-exercise = suba y baje un escalón durante un minuto
ask-talk = hable
ask-laugh = se ría
ask-grip = cierre fuerte la otra mano
ask-cold_other_hand = meta la otra mano en agua fresca
ask-ice_water = meta la otra mano en agua helada (solo simulado)
ask-valsalva = haga fuerza con la boca cerrada (solo simulado)
ask-face_immersion = meta la cara en agua fría (solo simulado)
ask-caution = Solo simulado: nunca lo hagas con una persona en clase. Puede provocar desmayos. Puede frenar el corazón, y eso es peligroso. Si puede hacerse o no, lo deciden las normas locales, tu institución y los profesionales de la salud habilitados.
ask-caution_effort = Algunas personas no deben hacerlo. Por ejemplo, con problemas de corazón o de pulmón, presión alta o embarazo. Cualquiera puede decir que no, sin dar razones. Para si hay dolor o mareo. Deciden las normas locales, tu institución y los profesionales de la salud habilitados.

error-unknown = El programa comunicó un error que no conoce ({ $code }).
error-cut_short = El archivo termina antes de tiempo: falta una parte. Pide al estudiante que lo guarde otra vez.
error-no_result = No es un archivo de resultado, o falta una parte. ({ $found })
error-version = Este archivo de resultado tiene la forma { $found }. Esta versión de Dicrotic lee la forma { $ours }.
error-code = { $found }
error-scenario_missing = Su escenario no está aquí. Abre antes el archivo del escenario o pega el enlace.
error-other_bench = No es el escenario asignado.
error-set_twice = El mismo escenario ya está aquí, con otros criterios ({ $other }). Abre solo el que quieres usar para calificar. «Borrar todo» empieza otra vez.
error-too_long = Es más largo que cualquier resultado.
error-replay = No se puede reproducir: { $found }
error-core_stopped = La simulación se detuvo. Vuelve a cargar la página. El intento está guardado hasta la última acción. ({ $told })
error-scenario_invalid = No se puede leer un archivo de escenario: { $field } debería ser { $expected }, pero es { $found }.
error-csv_empty = { $file } no tiene ninguna línea con números.
error-csv_cell = { $file }, línea { $line }, columna { $column }: se esperaba { $expected }, se encontró «{ $found }».
error-csv_columns = { $file }, línea { $line }: se esperaban al menos { $expected } columnas, se encontraron { $found }.
error-csv_cells = { $file }, línea { $line }: se esperaban { $expected } columnas, como en las líneas de arriba, se encontraron { $found }. Puede que la coma sea a la vez decimal y separador.
error-csv_thousands = { $file }, línea { $line }: «{ $found }» puede ser un número decimal o de miles, porque en la misma columna está «{ $other }». Escribe los números sin signo entre los miles.
error-csv_column_unknown = { $file } no tiene la columna «{ $found }».
error-csv_time_order = { $file }, línea { $line }: el tiempo debe aumentar, pero después de { $previous_s } s viene { $found_s } s.
error-csv_rate_missing = { $file } no tiene columna de tiempo, así que no se conoce su frecuencia de muestreo. Añade una primera columna con el tiempo en segundos.
error-csv_rate_range = { $file }: se esperaba una frecuencia de muestreo de { $low_hz } a { $high_hz } Hz, se encontró { $found_hz } Hz.
error-csv_length = { $file }: se esperaban de { $low } a { $high } muestras, se encontraron { $found }.
error-csv_gap = { $file }: hay un hueco de { $gap_s } s, y lo habitual son { $usual_s } s. Corta la grabación en el hueco y abre una parte.
error-csv_missing = { $file }: faltan { $found } de { $of } valores; puede faltar como mucho uno de cada { $limit_one_in }.
error-restore_invalid = No se puede leer el intento guardado: { $found }.
error-bad_value = { $field } debería ser { $expected }.
error-drawing_failed = No se puede dibujar el trazo: { $found }.
error-no_canvas = Este navegador no puede dibujar el trazo.
error-no_recording = Esa grabación no existe.
error-seed_invalid = La semilla de la dirección no se puede usar: { $found }.
error-not_found = Falta un archivo de esta página: { $what }.
error-no_scenario = Aquí no hay ningún escenario con el nombre «{ $id }». Elige uno de estos.
error-file_left = El archivo que estaba abierto sigue abierto.
error-page = Ha fallado una parte de esta página. Lo demás funciona. Vuelve a cargar la página para arreglarlo. ({ $told })
