### El pulso propio: al tacto, con un recuento en silencio, con la cámara.

own-title = Tu propio pulso
own-lede = En los escenarios el dedo es simulado. Aquí mides el pulso que llevas contigo.
own-care = Solo si quieres: nadie tiene que medirse. Nada sale de este dispositivo. Esta página no dice nada sobre tu salud y no juzga tu corazón. Si los latidos llegan desiguales, o si algo te preocupa, dilo a tu docente.
own-ways = Formas de medir
own-way_touch = Al tacto
own-way_count = En silencio
own-way_camera = Con la cámara

own-seconds = Cuánto tiempo
own-seconds_one = { $s } s
own-stop = Parar
own-open = Abrir como grabación
own-outcome = Aquí verás el resultado.
own-rate = Frecuencia cardíaca
own-rate_plain = { $rate } latidos/min
own-rate_off = { $rate } ± { $off } latidos/min
own-rate_none = ninguna
own-uneven = Los intervalos entre latidos nunca son todos iguales. Esta página no dice por qué. Es una pregunta para tu docente.
own-file_touch = pulso-propio-tacto
own-file_camera = pulso-propio-camara

own-touch_title = Siéntelo y toca
own-wrist = En la muñeca.
    .how = Pon una palma hacia arriba. Pon dos yemas debajo de la base del pulgar, en el surco junto al hueso. Presiona suavemente hasta sentir el latido.
own-neck = En el cuello.
    .how = Pon dos yemas junto a la tráquea, debajo de la mandíbula. Presiona suavemente y solo en un lado. Nunca presiones los dos lados, y no frotes.
own-touch_fingers = Usa las yemas y no el pulgar. El pulgar tiene su propio pulso.
own-touch_hand = Toca con un dedo libre, una vez en cada latido: en el botón, o con Espacio o Intro. Otra persona puede tocar por ti.
own-touch_dizzy = Si te mareas, suelta y siéntate.
own-tap = Toca
own-tap_first = Toca con el primer latido
own-tap_starts = El tiempo de { $s } s empieza con tu primer toque.
own-tap_count = { $n ->
    [one] 1 toque
   *[other] { $n } toques
}, { $s } s de { $of } s
own-undo = Quitar el último toque
own-tap_few = Muy pocos toques para una frecuencia cardíaca. Toca con cada latido, tres veces o más.
own-tap_n = Toques
own-tap_of = { $n } toques, es decir { $intervals } intervalos entre latidos en { $s } s
own-interval = Intervalo entre latidos medio
own-interval_ms = { $ms } ms, dispersión { $sd } ms
own-off_why = Después de ± ves cuánto puede desviarse, porque ningún toque cae justo en su latido.
own-tap_missed = { $n ->
    [one] Un intervalo entre latidos es casi el doble de los demás. Quizá te faltó un latido.
   *[other] { $n } intervalos entre latidos son casi el doble de los demás. Quizá te faltaron latidos.
}
own-tap_doubled = { $n ->
    [one] Un intervalo entre latidos es casi la mitad de los demás. Quizá tocaste dos veces.
   *[other] { $n } intervalos entre latidos son casi la mitad de los demás. Quizá tocaste dos veces.
}

own-count_title = Cuenta en silencio
own-count_how = Busca tu pulso. Pulsa el botón en un latido y llama cero a ese latido. Sigue contando sin voz. No ves ningún reloj. Al final la página avisa con un tono corto.
own-count_why = ¿Por qué cero? El primer latido inicia el tiempo. Si lo llamas uno, cuentas un latido de más.
own-count_ready = Primero busca tu pulso.
own-count_start = Empezar en un latido
own-count_on = Cero, uno, dos …
own-count_leave = Dejar de contar
own-count_over = Alto. ¿A qué número llegaste?
own-count_n = Latidos contados
own-count_take = Calcular
own-count_bad = Escribe un número entero de 0 a { $most }.
own-count_rate = { $n } latidos en { $s } s: { $n } × { $multiplier } = { $rate } latidos/min. Un latido más o menos lo cambia en { $step } latidos/min.

own-camera_title = Una yema sobre la cámara
own-camera_how = Cada latido lleva sangre a la yema, y su color cambia un poco. Una cámara puede verlo. Apoya una yema en la lente, sin presionar. Deja la mano quieta y apoyada.
own-camera_lamp = Si la cámara tiene luz, la página la enciende. Si no tiene, vuelve la lente hacia una lámpara de mesa o hacia el cielo claro. Nunca hacia el sol.
own-camera_before = Antes de encender la cámara
own-camera_choice = Tú decides. Puedes parar en cualquier momento.
own-camera_numbers = De cada imagen la página conserva tres números: cuánto rojo, verde y azul hay en su centro.
own-camera_nothing = Ninguna imagen se conserva, se guarda ni se envía. Los números se quedan en este dispositivo.
own-camera_off = La cámara y su luz se apagan cuando paras, sales de aquí o pasas a otra aplicación.
own-camera_warm = La luz de la cámara se calienta. Quita el dedo si quema.
own-camera_start = Encender la cámara
own-camera_is_off = La cámara está apagada.
own-camera_other = Usar otra cámara
own-camera_asking = Pidiendo la cámara al navegador …

own-quality-start = Apoya una yema en la lente.
own-quality-no_finger = Cubre la lente con una yema.
own-quality-too_dark = Demasiado oscuro. Busca más luz: una lámpara de mesa o el cielo.
own-quality-too_bright = Demasiado claro. Cubre toda la lente, o aléjate de la luz.
own-quality-press_less = Presiona menos.
own-quality-hold_still = No te muevas.
own-quality-wait = Unos segundos más.
own-quality-good = Bien. Quédate así.
own-quality-none = No llegan imágenes de la cámara.
own-light-on = La luz de la cámara está encendida.
own-light-none = Esta cámara no tiene una luz que la página pueda encender. Usa una lámpara de mesa o el cielo.
own-light-failed = La luz de la cámara no se encendió. Usa una lámpara de mesa o el cielo.
own-now = { $rate } latidos/min ahora
own-recorded_wait = La grabación de { $s } s empieza sola cuando se puede leer el pulso.
own-recorded_on = La grabación ha empezado.
own-recorded = Grabado: { $s } s de { $of } s
own-part = De { $from } a { $to } s
own-colors = Guardar los colores como CSV

own-ended-done = La grabación está completa. La cámara está apagada.
own-ended-stopped = La cámara está apagada.
own-ended-taken = La cámara ya no está: la tiene otro programa, o se desconectó. Aquí está apagada.
own-ended-hidden = La cámara se apagó porque esta página no estaba a la vista.
own-ended-long = El pulso no se pudo leer en tres minutos, y la cámara está apagada. Puedes medir al tacto.
own-ended_nothing = No se grabó nada.

own-fail-denied = No se permitió la cámara. Si quieres permitirla, busca el signo de la cámara junto a la dirección de esta página.
own-fail-missing = No se encontró ninguna cámara.
own-fail-busy = La cámara no arrancó. Quizá la tiene otro programa. Cierra ese programa y empieza otra vez.
own-fail-insecure = El navegador no da la cámara a esta página. Hay que abrirla por https, o en esta computadora.
own-fail-policy = La página que rodea a esta no le deja usar la cámara. En su propia pestaña puede.
own-fail-policy_page = El servidor web de esta página no permite la cámara.
own-fail-failed = La cámara no arrancó. ({ $told })
own-fail_tab = Abrir en su propia pestaña
own-fail_else = Puedes medir al tacto, o con un recuento en silencio.

own-refused-gap = Faltan imágenes.
own-refused-too_dark = Demasiado oscuro.
own-refused-too_bright = Demasiado claro.
own-refused-no_finger = No hay dedo, o se apartó de la lente.
own-refused-moving = La luz cambia demasiado: el dedo o la cámara se mueve.
own-refused-weak = El pulso es demasiado pequeño para leerlo.
own-refused-unsteady = Los latidos no se distinguen bien.
own-refused-disagree = Dos formas de leerlo no coinciden.
own-refused-unknown = sin frecuencia cardíaca ({ $code })

own-list_title = Lo que has medido
own-list_none = Nada todavía. Mide dos veces, o de dos formas, y mira si coinciden.
own-list_one = Mide una vez más, o de otra forma, y mira si coinciden.
own-list_touch = Al tacto, { $s } s
own-list_count = En silencio, { $s } s
own-list_camera = Con la cámara, { $s } s
own-compare_within = Entre las dos últimas hay { $d } latidos/min. Cada una puede desviarse, y juntas más que eso: coinciden.
own-compare_beyond = Entre las dos últimas hay { $d } latidos/min. Es más de lo que las dos pueden desviarse. Una frecuencia cardíaca cambia, y un recuento puede fallar. Mide otra vez.
