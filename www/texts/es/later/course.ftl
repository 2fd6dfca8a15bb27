### Una asignación dentro de un aula virtual.

course-title = Aula virtual
course-own_misreading = Propio del docente: { $name }
course-which = Intento { $n } de { $of }
course-finish = Terminar y entregar
course-none = Esta página no encontró ningún aula virtual. El intento se guarda en este dispositivo.
course-kept = El aula virtual tiene todo hasta ahora.
course-long = Este intento es ya demasiado largo para el aula virtual. Este dispositivo lo guarda entero. El aula virtual guarda lo de antes.
course-long_nowhere = Este intento es ya demasiado largo para el aula virtual, y este dispositivo no guarda nada. Comprueba pronto tu lectura: el resultado y la puntuación aún se envían.
course-refused = El aula virtual no aceptó el último paso. Este dispositivo lo guarda.
course-lost = Ni el aula virtual ni este dispositivo guardaron el último paso. Guarda el archivo de resultado, en «Resultado», y dáselo a tu docente.
course-ended = El aula virtual tiene tu resultado. Puedes cerrar esta pestaña.
course-ended_left = El aula virtual tiene tu resultado. Tienes otro intento: abre esta actividad otra vez. Puedes cerrar esta pestaña.
course-suspended = El aula virtual tiene tu intento. Puedes continuarlo después. Puedes cerrar esta pestaña.
course-other = El intento que guarda el aula virtual es de otra versión de esta asignación. Empieza uno nuevo.
course-begin = Empezar el intento { $n }
course-begin_of = Empezar el intento { $n } de { $of }
course-new_closes = Este intento se termina entonces. Sus puntos se quedan en el aula virtual.
course-stay = Quedarse aquí
course-no_tries = { $n ->
    [one] Hay un solo intento, y ya lo has usado.
   *[other] Hay { $n } intentos, y los has usado todos.
}
course-untaken_title = Al aula virtual le falta un intento
course-untaken = Este dispositivo guarda un intento tuyo, de { $when }, que el aula virtual nunca recibió. ¿Quieres continuarlo?
course-untaken_yes = Continuarlo
course-untaken_no = Empezar uno nuevo
course-over_title = Tu resultado
course-over_about = El aula virtual recibe tus puntos, cada paso y lo que hiciste. Tu docente los ve allí. Cuando acabes aquí, pulsa «Terminar y entregar», arriba.
course-points = Puntos: { $n } de 100. El aula virtual lo da por superado desde { $need } puntos.
course-left_none = Este era el último intento.
course-left = { $n ->
    [one] Hay un intento más. «Otra vez, con semilla nueva» lo empieza.
   *[other] Hay { $n } intentos más. «Otra vez, con semilla nueva» empieza el siguiente.
}
course-lost_title = El aula virtual no muestra mi resultado
course-lost_about = Guarda el archivo de resultado y dáselo a tu docente. Contiene el escenario, todo lo que hiciste y tus lecturas.
course-save = Guardar el archivo de resultado
course-goes = Qué se envía
course-goes_where = Tu trabajo va a { $host }. Tu docente lo lee allí.
course-goes_what = Se envían tu ID de estudiante, tus puntos, cuánto tiempo trabajaste y cada paso con lo que escribiste. También se envía todo lo que haces aquí, para que puedas continuar después. Nada más sale de este dispositivo.
course-goes_close = Cerrar
course-again = El aula virtual aún no sabe que has terminado. Este dispositivo lo guarda todo. Mira la red y pulsa el botón otra vez.
course-looks = El aula virtual abrió esto solo para mirar. Nada cuenta y nada se guarda.
course-looked = Puedes cerrar esta pestaña.
course-launch_broken = El aula virtual abrió esta actividad, pero falta algo. Díselo a tu docente. Abre la actividad otra vez desde el aula virtual.
course-launch_over = Esta visita ha terminado. Abre la actividad otra vez desde el aula virtual. No se pierde nada.
course-launch_refused = El aula virtual no deja empezar esta visita. Abre la actividad otra vez desde el aula virtual.
course-launch_unreachable = Esta página no llega ahora al aula virtual. Mira la red y carga esta página otra vez.
course-launch_used = El enlace que abrió esta página sirve una sola vez. Abre la actividad otra vez desde el aula virtual. No se pierde nada.
