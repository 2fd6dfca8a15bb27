### Una línea para cada control: qué hace, y su unidad.

explain-all = Qué hace cada uno

explain-time_base = Cuántos segundos abarca una pantalla: más larga muestra más latidos, más corta muestra cada uno con más detalle.
explain-range = Hasta dónde llega la pantalla por encima y por debajo de cero, más o menos tantos voltios: menor hace el trazo más alto.
explain-zero = Toma la tensión de este momento, en voltios, como centro de la pantalla.
explain-invert = Pone el trazo cabeza abajo, para un pulso que apunta al lado contrario.
explain-shown = Quita el trazo de la pantalla o lo devuelve; las muestras no se tocan.
explain-high_pass = Quita lo que es más lento que estos hercios: se van la deriva y la respiración, y con ellas la forma de la onda si se pone alto.
explain-low_pass = Quita lo que es más rápido que estos hercios: se va el ruido fino, y con él la incisura si se pone bajo.
explain-order = Con qué pendiente corta un filtro: el orden 1 baja a una décima parte por cada diez veces la frecuencia, el orden 2 a una centésima.
explain-notch = Quita una banda estrecha alrededor de la frecuencia de la red, en hercios. Tapa el zumbido; no arregla su causa.
explain-average = Pone en lugar de cada muestra la media de estos milisegundos.
explain-input = Cuál de las tres entradas de la unidad muestra la tira.
explain-rate = Cuántas muestras por segundo toma el conversor, en hercios. Si son muy pocas, las ondas rápidas salen como lentas.
explain-bits = En cuántos peldaños se divide el camino de menos a más fondo de escala: 2 elevado a este número de bits.
explain-anti_alias = Quita lo que es demasiado rápido para la frecuencia de muestreo antes de que pueda salir como algo lento.
explain-scale = Multiplica los valores mostrados; ×10 y ×1000 son para sensores con amplificador propio.

explain-end = Cada clavija con el conector en el que está. El botón de al lado mueve la clavija.
explain-strap_on = Si el sensor está sujeto con la correa a la yema del dedo.
explain-tightness = Con cuánta fuerza aprieta la correa el sensor, de floja a apretada. Demasiado floja da poco pulso; demasiado apretada detiene la sangre.
explain-place = En qué parte del dedo está el sensor. La yema tiene el lecho vascular más rico.
explain-face = Qué cara del sensor toca la piel. Solo una de ellas siente.
explain-height = Cuánto está la mano por encima o por debajo del corazón, en centímetros. Con ello cambia la presión en el dedo.
explain-ask = Algo que el sujeto hace por ti; el pulso responde a su tiempo.
explain-switch_strip = Corriente para todo lo que está enchufado en la regleta.
explain-switch_unit = Corriente para la unidad de registro, si su cable de alimentación llega a un enchufe con tensión.
explain-charger = El cargador, puesto en la regleta o fuera de ella. Mientras está puesto, radia zumbido.
explain-lamp = La lámpara de mesa, encendida o apagada. Los sensores de luz la ven, y su cable radia zumbido.
explain-move = Pone una parte de la mesa en otro sitio, en centímetros desde la izquierda y desde el borde lejano.
