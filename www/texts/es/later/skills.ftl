### El mapa de destrezas.

skills-title = Mapa de destrezas
skills-lede = Doce destrezas de la mesa. Una destreza está a punto tras dos aciertos seguidos con semillas distintas, y al cabo de unos días toca repasarla.
skills-next = Lo siguiente
skills-all_ready = Las doce están a punto
skills-go = Tomar «{ $title }»
skills-why-new = { $skill }: aún sin conocer.
skills-why-practising = { $skill }: el último intento no se sostuvo.
skills-why-once = { $skill }: se sostuvo una vez. Con otra semilla quedaría a punto.
skills-why-due = { $skill }: hace unos días que se sostuvo. Mira si aún lo hace.
skills-ready_title = A punto para la práctica
skills-ready_yes = A punto: dieciséis de veinte o más, { $n } veces seguidas, con semillas distintas.
skills-ready_no = { $n } de { $need } mesas con 16 de 20 o más, con semillas distintas, sin ayuda.
skills-state-new = aún sin conocer
skills-state-practising = en práctica
skills-state-once = se sostuvo una vez
skills-state-ready = a punto
skills-state-due = toca repasar
skills-retest = Vuelve entre el { $from } y el { $to }.
skills-retest_due = Toca desde el { $from }; mejor antes del { $to }.
skills-evidence = Historial: se sostuvo { $passes }, abierto { $fails }
skills-got-pass = se sostuvo:
skills-got-fail = abierto:
skills-kept = El mapa se apoya en los intentos guardados en este dispositivo, y en nada más.
skills-json = Exportar en JSON
skills-drop = Olvidar todos los intentos
skills-dropped = { $n ->
    [one] Un intento olvidado.
   *[other] { $n } intentos olvidados.
}

skill-wiring = Conexiones
    .about = Cada clavija en el conector que le corresponde.
skill-link = Enlace
    .about = Lograr que la computadora vea la unidad.
skill-contact = Contacto
    .about = Correa, sensor y mano, para que llegue un pulso.
skill-range = Rango
    .about = Un pulso que llena la pantalla y no se recorta.
skill-time_base = Base de tiempo
    .about = Latidos dibujados ni muy estrechos ni muy anchos.
skill-hum = Zumbido
    .about = Hallar de dónde viene el ruido y quitarlo ahí.
skill-motion = Movimiento
    .about = Distinguir una mano inquieta de un corazón.
skill-recording = Registro
    .about = Un registro lo bastante largo, y propio.
skill-window = Ventana
    .about = A y B alrededor de un tramo del que fiarse.
skill-counting = Recuento
    .about = Cada latido una vez, de A a B.
skill-arithmetic = Aritmética
    .about = De N y T a latidos por minuto.
skill-uncertainty = Incertidumbre
    .about = Cuánto te puedes fiar de la frecuencia.
