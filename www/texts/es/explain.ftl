### Una línea para cada control: qué hace, y su unidad.

explain-all = Qué hace cada uno

explain-time_base = Cuántos segundos muestra una pantalla. Más larga muestra más latidos; más corta muestra cada latido con más detalle.
explain-range = Hasta dónde llega la pantalla por encima y por debajo de cero, más o menos, en voltios. Un rango menor hace el trazo más alto.
explain-range_shown = Hasta dónde llega la pantalla por encima y por debajo de cero, en la unidad del archivo. La altura completa muestra toda la grabación.
explain-zero = Hace de la tensión de este momento, en voltios, el centro de la pantalla.
explain-zero_shown = Pone el valor medio de la pantalla en el centro de la pantalla.
explain-invert = Pone el trazo cabeza abajo, para un pulso que apunta al lado contrario.
explain-shown = Esconde el trazo o lo muestra otra vez. Las muestras no cambian.
explain-high_pass = Quita lo que es más lento que estos hercios, como la deriva y la respiración. Si está alto, la onda cambia de forma.
explain-low_pass = Quita lo que es más rápido que estos hercios, como el ruido. Si está bajo, se pierde también la incisura dícrota.
explain-order = Con qué fuerza corta un filtro. A diez veces la frecuencia, el orden 1 deja una décima parte y el orden 2 una centésima.
explain-notch = Quita una banda estrecha alrededor de la frecuencia de la red eléctrica, en hercios. Tapa el zumbido; no arregla la causa.
explain-average = Pone en lugar de cada muestra la media de estos milisegundos.
explain-integral = Muestra la integral: la suma de la señal en el tiempo. De un pulso de pendiente hace un pulso. Una onda de 1 Hz conserva su altura.
explain-buffered = Con el búfer la impedancia de entrada es alta: el sensor conserva su carga y el trazo es un pulso de volumen. Una entrada simple de un megaohmio puede dar un pulso de pendiente.
explain-calibrator = Pone en la entrada una onda cuadrada conocida: 10 mV de altura, una vez por segundo. Con ella ves si el rango y la base de tiempo están bien, y qué hace un filtro con un escalón.
explain-input = Cuál de las entradas del registrador muestra el trazo.
explain-rate = Cuántas muestras por segundo toma el conversor, en hercios. Con muy pocas, las ondas rápidas parecen lentas.
explain-bits = Cuántos niveles tiene todo el rango: 2 elevado a este número de bits.
explain-anti_alias = Quita lo que es demasiado rápido para la frecuencia de muestreo, antes de que pueda parecer algo lento.
explain-scale = Multiplica los valores mostrados. ×10 y ×1000 son para sensores con amplificador propio.

explain-end = Cada clavija, y el conector en el que está. Con el botón de al lado meneas la clavija.
explain-wait = Espera de golpe. Úsalo cuando algo tarda minutos: un dedo frío que se calienta, o la frecuencia cardíaca tras el ejercicio.
explain-strap_on = Si el sensor está sujeto con la correa a la yema del dedo.
explain-tightness = Con cuánta fuerza presiona la correa, de floja a apretada. Demasiado floja da un pulso pequeño; demasiado apretada detiene la sangre.
explain-place = En qué parte del dedo está el sensor. La yema blanda tiene más vasos.
explain-face = Qué lado del sensor toca la piel. Solo mide el lado sensible.
explain-height = Cuánto está la mano por encima o por debajo del corazón, en centímetros. Con ello cambia la presión en el dedo.
explain-ask = Algo que el sujeto hace por ti. El pulso necesita un tiempo para cambiar.
explain-switch_power_strip = Corriente para todo lo que está enchufado en la regleta.
explain-switch_recorder = Corriente para el registrador, si su cable de corriente está en un enchufe con corriente.
explain-charger = El cargador de la computadora, en la regleta o fuera de ella. Causa zumbido mientras está enchufado.
explain-lamp = Enciende o apaga la lámpara de mesa. Los sensores de luz ven su luz, y su cable causa zumbido.
explain-move = Mueve una pieza sobre la mesa, en centímetros desde el borde izquierdo y desde el borde lejano.
