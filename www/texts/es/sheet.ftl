### La hoja de trabajo y el nombrar averías.


try-look = Mirar un lugar
try-touch = Tocar
try-ask = Hablar con el sujeto
try-other = La otra mano
try-help = Arreglar

sheet-title = Hoja de trabajo
sheet-about = Elige una grabación encima del trazo. Pon A y B alrededor de una parte limpia, marca los latidos y escribe lo que lees.
sheet-about_recording = Pon A y B alrededor de una parte limpia, marca los latidos y escribe lo que lees.

naming-title = ¿Qué falla aquí?
naming-about = Nombra lo que muestran tus pruebas: primero lo que ves, luego el fallo. Nada se juzga antes de comprobar. Puedes quitar un nombre.
naming-why = ¿Cómo lo sabes? Una línea, si quieres. Nunca se califica.
naming-none = Aún no has nombrado nada.
naming-list = Lo que has nombrado
naming-unname = Quitar: { $fault }
naming-named = Nombrado: { $fault }.
naming-taken_back = Quitado: { $fault }.
naming-loading = La lista de nombres se está cargando.
naming-failed = La lista de nombres no se cargó. ({ $told })
naming-again = Intentar otra vez
naming-read = Leer sobre los fallos y sus pruebas

sheet-line-count = Entre A y B cuento N =
    .after = latidos
sheet-line-seconds = tiempo T =
    .after = segundos
sheet-line-multiplier = 60/T =
sheet-line-rate = frecuencia cardíaca =
    .after = latidos/min
sheet-check = Comprobar mi lectura ({ $n } de { $of })
sheet-reveal = Ver la frecuencia cardíaca verdadera
sheet-reveal_recording = Ver la frecuencia cardíaca del detector
sheet-check_over = Comprobar mi lectura
sheet-again = Otra vez, con semilla nueva
sheet-another = Elegir otra ventana de conteo
sheet-another_now = Los cursores siguen donde estaban. Mueve A y B.
sheet-window_over = Esta ventana de conteo está cerrada. Elige otra ventana de conteo.

problem-empty = Aún en blanco.
problem-not_a_number = Esto no es un número. Usa cifras, con coma o punto.
problem-negative = Debe ser mayor que cero.
problem-two_signs = Hay dos comas o puntos. Usa uno solo como signo decimal.
problem-divided_by_zero = No se puede dividir entre cero.
problem-too_long = Este número es demasiado largo.
problem-unknown = Esto no se puede leer aquí como un número.

asked-title = Lo que necesita tu lectura
asked-points = Cómo se puntúa este intento
asked-row = { $n ->
    [one] 1 punto
   *[other] { $n } puntos
}
asked-ready = Para estar listo, aprueba la comprobación con 16 puntos de 20 o más y ninguna fila a cero. Haz tú todos los pasos, sin el ejemplo y sin empezar a medias. Las pistas no cuestan puntos.
asked-fill = El pulso llena del { $low } al { $high } % de la pantalla.
asked-hum = El zumbido queda por debajo del { $hum } % del pulso.
asked-clip = Nada está recortado, ni arriba ni abajo.
asked-record = La grabación dura { $s } s o más.
asked-window = A y B están separados { $s } s o más.
asked-long = A y B están separados 15 s o más. En una ventana de conteo más corta cada latido cambia demasiado la frecuencia cardíaca.
asked-compared = Tu recuento se compara con el del detector en tu propia ventana de conteo.
asked-count = N es el número de latidos entre A y B: uno por cada subida rápida.
asked-work = Multiplicador = 60/T; frecuencia cardíaca = N × multiplicador.

fault-cause = Causa
fault-seen = En el trazo
fault-test = La prueba
fault-remedy = Arreglo
fault-alike = Se parece a

faults-title = Fallos, y las pruebas que los distinguen
faults-lede = Aquí los fallos que se parecen están juntos. Los distingue una prueba, y rara vez mirar más tiempo. Léelo antes o después de la práctica. En la práctica, prueba primero.
faults-jump = Lo que ves primero
faults-back = Volver al escenario
faults-back_start = Volver a los escenarios
faults-order_title = Un orden que ahorra tiempo
faults-order = Luces indicadoras y cables|¿ve la computadora el registrador?|¿es la entrada correcta?|golpea el sensor: una espiga significa que sensor, cable y registrador funcionan|rango y base de tiempo|¿está quieto el sujeto?|después mueve cables, teléfono y cargador, de uno en uno
