### El lado del estudiante de una asignación: empezarla desde un enlace, y entregar.

hand-link_bad = Este enlace no se puede usar. { $told }
hand-link_damaged = Le falta una parte o se cambió. Copia otra vez el enlace entero.
hand-code_each = ID de estudiante que te dio tu docente
hand-code_same = Tu ID de estudiante, si tienes uno
hand-need_code = Escribe antes tu ID de estudiante. De él se hace tu escenario.
hand-begin = Empezar el intento { $n }
hand-begin_of = Empezar el intento { $n } de { $of }
hand-go_on = Continuar el intento { $n }
hand-no_tries = Has usado todos los intentos. El último aún lo puedes mirar y entregar.
hand-watch = Ver antes un ejemplo
hand-turn_away = Ahora no
hand-guest = No guardar nada en este dispositivo (para una computadora compartida)
hand-guest_about = Entonces tu trabajo se pierde al cerrar o recargar esta pestaña. Guarda antes el archivo de resultado.

hand-title = Entregar
hand-about = El archivo y el código de resultado contienen el escenario, todo lo que hiciste y tus lecturas, y nada más. Esta página no envía nada. Uno de los dos lo envías tú.
hand-own_code = Tu ID de estudiante
hand-file = Guardar el archivo de resultado
hand-copy = Copiar el código de resultado
hand-show_code = Mostrar el código de resultado
hand-code = El intento como código de resultado
hand-saved = Guardado. Envía el archivo como pida tu docente.
hand-copied = Copiado.
hand-by_hand = Seleccionado. Cópialo con el teclado.

hand-course_part = Esta es una parte de «{ $title }».
hand-course_back = Volver al curso
hand-course_who = La lista muestra entonces lo que hiciste en este dispositivo.
hand-course_about = Un archivo contiene los resultados de cada parte que comprobaste en este dispositivo. Esta página no envía nada. El archivo lo envías tú.
hand-course_save = Guardar un archivo con el resultado de todas las partes
hand-course_codes = Copiar todos los códigos de resultado
hand-course_code_list = Los códigos de resultado, uno por línea
hand-course_saved = { $n ->
    [one] Guardado, con { $n } resultado. Envía el archivo como pida tu docente.
   *[other] Guardado, con { $n } resultados. Envía el archivo como pida tu docente.
}
hand-course_open = Abrir
hand-course_open_part = Abrir «{ $title }»
hand-course_looking = Cargando lo que hiciste.
hand-course_state_nothing = Sin empezar.
hand-course_state_begun = Empezada, sin comprobar.
hand-course_state_checked = Comprobada, aún no es correcta: { $n } de { $of } puntos.
hand-course_state_done = Hecha: { $n } de { $of } puntos.
hand-course_phase_later = se abre más tarde
hand-course_phase_open = abierta
hand-course_phase_closed = después de su fecha
hand-course_opens = Se abre el { $when }.
hand-course_opened = Abierta desde el { $when }.
hand-course_due = Hasta el { $when }.
hand-course_was_due = Era hasta el { $when }.
hand-course_total = { $n } de { $of } partes hechas, { $points } de { $most } puntos.
