### Lo que guarda este dispositivo, y de quién es.

device-title = Lo que guarda este dispositivo
device-lede = Tu trabajo se guarda en este navegador, en este dispositivo y en ningún otro sitio. Aquí ves de quién es lo que hay, y puedes borrarlo.
device-you = Quién trabaja aquí ahora
device-you_none = Nadie ha dado un ID de estudiante en esta pestaña. El trabajo sin ID es de todos los que no dan ninguno.
device-you_known = Un ID de estudiante que empieza así: { $hint }
device-you_guest = Una persona invitada. No se guarda nada en este dispositivo. Todo se pierde al cerrar o recargar esta pestaña.
device-id = Mi ID de estudiante
device-be = Mostrar mi trabajo
device-leave = He terminado aquí
device-guest = Trabajar como persona invitada
device-guest_leave = Dejar de ser persona invitada
device-whose = De quién es lo que hay aquí
device-whose_none = Aquí no hay nada guardado.
device-owner_none = Sin ID de estudiante
device-owner_known = Un ID de estudiante que empieza así: { $hint }
device-owner_you = (tú)
device-owner_has = { $attempts ->
    [one] un intento
   *[other] { $attempts } intentos
}, { $pages ->
    [one] una página en el cuaderno
   *[other] { $pages } páginas en el cuaderno
}
device-mine = Mis intentos
device-mine_none = Ninguno tuyo.
device-attempt = de { $when }
device-drop = Borrar
device-drop_one = Borrar: { $title }
device-forget_me = Borrar todo mi trabajo
device-forget_all = Borrar todo en este dispositivo
device-forget_sure_me = Esto borra de este dispositivo tus intentos, tu cuaderno y tu mapa de destrezas. No se pueden recuperar.
device-forget_sure_nobody = Esto borra todo lo que se hizo sin ID de estudiante, también lo de otras personas. No se puede recuperar.
device-forget_sure_all = Esto borra el trabajo de todas las personas en este dispositivo, con borradores y ajustes. No se puede recuperar.
device-forget_yes = Borrarlo
device-forget_no = Conservarlo
device-forgotten = Borrado.
device-aside = Lo que no se pudo usar
device-aside_about = Intentos anteriores que sustituiste, y cosas que la página no pudo leer. Guarda una para mirarla, o dásela a una persona que pueda ayudar.
device-aside_save = Guardar
device-aside_some = { $n ->
    [one] Una cosa guardada no se pudo leer. Se queda en este dispositivo.
   *[other] { $n } cosas guardadas no se pudieron leer. Se quedan en este dispositivo.
}
device-aside_go = Ver lo que no se pudo usar
