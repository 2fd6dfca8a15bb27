### El mapa de destrezas.

skills-title = Mapa de destrezas
skills-lede = Doce destrezas de la práctica. Tienes una destreza tras dos aciertos seguidos con semillas distintas. Al cabo de unos días toca repasarla.
skills-next = Lo siguiente
skills-all_ready = Las doce están listas
skills-go = Empezar «{ $title }»
skills-why-new = { $skill }: sin empezar.
skills-why-practising = { $skill }: el último intento no fue correcto.
skills-why-once = { $skill }: fue correcta una vez. Repítela con otra semilla.
skills-why-due = { $skill }: tu último acierto fue hace unos días. Mira si aún puedes.
skills-ready_title = Listo para la práctica
skills-ready_yes = Listo: 16 de 20 puntos o más, { $n } veces seguidas, con semillas distintas.
skills-ready_no = { $n } de { $need } escenarios con 16 de 20 o más, con semillas distintas, sin ayuda.
skills-state-new = sin empezar
skills-state-practising = en práctica
skills-state-once = correcta una vez
skills-state-ready = lista
skills-state-due = toca repasar
skills-retest = Vuelve entre el { $from } y el { $to }.
skills-retest_due = Toca desde el { $from }; mejor antes del { $to }.
skills-evidence = Historial: correcta { $passes }, no correcta { $fails }
skills-got-pass = correcta:
skills-got-fail = no correcta:
skills-kept = El mapa usa solo los intentos guardados en este dispositivo.
skills-json = Exportar en JSON
skills-drop = Borrar todos los intentos
skills-dropped = { $n ->
    [one] Un intento borrado.
   *[other] { $n } intentos borrados.
}

skill-wiring = Conexiones
    .about = Pon cada clavija en el conector correcto.
skill-link = Enlace
    .about = Haz que la computadora vea el registrador.
skill-contact = Contacto
    .about = Pon la correa, el sensor y la mano de modo que llegue un pulso.
skill-range = Rango
    .about = Haz que el pulso llene la pantalla, sin nada recortado.
skill-time_base = Base de tiempo
    .about = Dibuja los latidos ni muy estrechos ni muy anchos.
skill-hum = Zumbido
    .about = Busca de dónde viene el ruido y quítalo ahí.
skill-motion = Movimiento
    .about = Distingue una mano que se mueve de un corazón.
skill-recording = Grabación
    .about = Haz una grabación bastante larga, y propia.
skill-window = Ventana de conteo
    .about = Pon A y B alrededor de una parte fiable.
skill-counting = Recuento
    .about = Cuenta cada latido una vez, de A a B.
skill-arithmetic = Aritmética
    .about = Saca los latidos por minuto de N y T.
skill-uncertainty = Incertidumbre
    .about = Di la incertidumbre de la frecuencia cardíaca.
