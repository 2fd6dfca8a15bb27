### La hoja de trabajo y el nombrar averías.

brief-more = todo el encargo
brief-less = plegar el encargo

try-look = Mirar un lugar
try-touch = Tocar
try-ask = Preguntar al sujeto
try-other = La otra mano
try-help = Arreglar

sheet-title = Hoja de trabajo
sheet-about = Abre un registro, pon los cursores A y B alrededor de un tramo limpio, marca los latidos y escribe lo que lees.
sheet-about_recording = Pon los cursores A y B alrededor de un tramo limpio, marca los latidos y escribe lo que lees.

naming-title = ¿Qué falla aquí?
naming-about = Nombra lo que señalan tus pruebas: primero la impresión, luego la avería. Nada se juzga antes de comprobar, y un nombre se puede retirar.
naming-none = Aún no has nombrado nada.
naming-list = Lo que has nombrado
naming-unname = Retirar: { $fault }
naming-named = Nombrada: { $fault }.
naming-taken_back = Retirada: { $fault }.
naming-loading = Los nombres están en camino.
naming-failed = Los nombres no llegaron. ({ $told })
naming-again = Intentar de nuevo
naming-read = Leer sobre las averías y sus pruebas

sheet-line-count = Entre A y B cuento N =
    .after = latidos
sheet-line-seconds = en una ventana de T =
    .after = segundos
sheet-line-multiplier = Para llegar a un minuto multiplico por
sheet-line-rate = así que la frecuencia cardíaca es
    .after = latidos/min
sheet-check = Comprobar mi lectura ({ $n } de { $of })
sheet-reveal = Ver la frecuencia verdadera
sheet-reveal_recording = Ver la frecuencia del detector
sheet-check_over = Comprobar mi lectura
sheet-check_first = Comprueba antes tu propia lectura; la otra frecuencia es una respuesta a ella.
sheet-again = Otra vez, con semilla nueva

problem-empty = Aún en blanco.
problem-not_a_number = Esto no se lee como un número. Bastan cifras, con coma o punto.
problem-negative = Debería ser más que nada.
problem-two_signs = Dos comas o puntos: no está claro cuál es el signo decimal.
problem-divided_by_zero = Nada se puede dividir entre cero.
problem-too_long = Es demasiado largo para leerlo como un solo número.
problem-unknown = Esto no se puede leer aquí como un número.

asked-title = Lo que necesita aquí una lectura
asked-points = Por qué da puntos este intento
asked-row = { $n ->
    [one] 1 punto
   *[other] { $n } puntos
}
asked-ready = Listo quiere decir: la comprobación aprobada, 16 puntos de 20 o más, ninguna fila en cero, y todo hecho por ti, ni mirado ni a medio hacer. Las pistas no cuestan nada.
asked-fill = El pulso llena del { $low } al { $high } % de la pantalla.
asked-hum = El zumbido queda por debajo del { $hum } % del pulso.
asked-clip = Nada está recortado, ni arriba ni abajo.
asked-record = El registro dura { $s } s o más.
asked-window = A y B están separados { $s } s o más.
asked-long = A y B están separados 15 s o más; en una ventana más corta cada latido pesa demasiado.
asked-compared = Tu recuento se compara con el del detector en tu propia ventana.
asked-count = N es el número de latidos entre A y B: uno por cada subida rápida.
asked-work = Multiplicador = 60/T; frecuencia = N × multiplicador.

fault-cause = Causa
fault-seen = En la tira
fault-test = La prueba que decide
fault-remedy = Remedio
fault-alike = Se parece a

faults-title = Averías y las pruebas que las distinguen
faults-lede = Las averías que se parecen a primera vista están juntas. Lo que las distingue es una prueba, rara vez mirar más tiempo. Léelo antes o después de la práctica; en la mesa, prueba primero.
faults-jump = Primeras impresiones
faults-back = Volver a la mesa
faults-back_start = Volver a los escenarios
faults-order_title = Un orden que ahorra tiempo
faults-order = Luces y conexiones|¿ve la computadora la unidad?|¿es la entrada correcta?|golpea el sensor: una espiga significa que sensor, cable y unidad están en orden|rango y base de tiempo|¿está quieto el sujeto?|después mueve cables, teléfono y cargador, de uno en uno
