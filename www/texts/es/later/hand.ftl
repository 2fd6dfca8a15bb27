### El lado del estudiante de una tarea: empezarla desde un enlace, y entregar.

hand-link_bad = Este enlace no se puede usar. { $told }
hand-link_damaged = Le falta una parte o se cambió. Copia el enlace entero e inténtalo de nuevo.
hand-code_each = Tu propio código (el que te dio tu docente; de él se hace tu mesa)
hand-code_same = Tu propio código, si tienes uno
hand-need_code = Escribe antes tu código: de él se hace tu mesa.
hand-begin = Empezar el intento { $n }
hand-begin_of = Empezar el intento { $n } de { $of }
hand-go_on = Seguir con el intento { $n }
hand-no_tries = Los intentos se han agotado. El último aún se puede mirar y entregar.
hand-watch = Ver antes un ejemplo
hand-turn_away = Ahora no
hand-guest = No guardar nada en este dispositivo (para un ordenador compartido)
hand-guest_about = Tu trabajo desaparece cuando esta pestaña se cierra o se recarga. Guarda antes el archivo de resultado.

hand-title = Entregar
hand-about = El archivo y el código contienen la mesa, todo lo que hiciste y tus lecturas, y nada más. Desde aquí no se envía nada: uno de los dos lo entregas tú.
hand-own_code = Tu propio código
hand-file = Guardar el archivo de resultado
hand-copy = Copiar el código
hand-show_code = Mostrar el código
hand-code = El intento como código
hand-saved = Guardado. Entrega el archivo como pida tu docente.
hand-copied = Copiado.
hand-by_hand = Seleccionado; cópialo con el teclado.

hand-course_part = Esta es una parte de «{ $title }».
hand-course_back = Volver al curso
hand-course_who = La lista muestra entonces lo que hiciste en este dispositivo.
hand-course_about = Un archivo contiene los resultados de cada parte que comprobaste en este dispositivo. Desde aquí no se envía nada: lo entregas tú.
hand-course_save = Guardar un archivo con el resultado de todas las partes
hand-course_codes = Copiar todos los códigos
hand-course_code_list = Los códigos, uno por línea
hand-course_saved = { $n ->
    [one] Guardado, con { $n } resultado. Entrega el archivo como pida tu docente.
   *[other] Guardado, con { $n } resultados. Entrega el archivo como pida tu docente.
}
hand-course_open = Abrir
hand-course_open_part = Abrir «{ $title }»
hand-course_looking = Buscando lo que hiciste.
hand-course_state_nothing = Sin empezar.
hand-course_state_begun = Empezada, sin comprobar.
hand-course_state_checked = Comprobada, aún no es correcta: { $n } de { $of } puntos.
hand-course_state_done = Hecha: { $n } de { $of } puntos.
hand-course_phase_later = se abre más tarde
hand-course_phase_open = abierta
hand-course_phase_closed = pasó su fecha
hand-course_opens = Se abre el { $when }.
hand-course_opened = Abierta desde el { $when }.
hand-course_due = Hasta el { $when }.
hand-course_was_due = Era hasta el { $when }.
hand-course_total = { $n } de { $of } partes hechas, { $points } de { $most } puntos.
