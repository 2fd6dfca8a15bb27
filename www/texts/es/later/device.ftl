### Lo que guarda este dispositivo, y de quién es.

device-title = Lo que guarda este dispositivo
device-lede = Tu trabajo se guarda en este navegador, en este dispositivo y en ningún otro sitio. Aquí ves de quién es lo que hay, y puedes quitarlo.
device-you = Quién trabaja aquí ahora
device-you_none = Nadie ha dado un código de estudiante en esta pestaña. El trabajo sin código es de todos los que no dan ninguno.
device-you_known = Un código de estudiante que empieza así: { $hint }
device-you_guest = Una persona invitada. No se guarda nada en este dispositivo. Todo desaparece cuando esta pestaña se cierra o se recarga.
device-id = Mi código de estudiante
device-be = Mostrar mi trabajo
device-leave = He terminado aquí
device-guest = Trabajar como persona invitada
device-guest_leave = Dejar de ser persona invitada
device-whose = De quién es lo que hay aquí
device-whose_none = Aquí no hay nada guardado.
device-owner_none = Sin código de estudiante
device-owner_known = Un código de estudiante que empieza así: { $hint }
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
device-drop = Olvidar
device-drop_one = Olvidar: { $title }
device-forget_me = Olvidarme
device-forget_all = Olvidar todo en este dispositivo
device-forget_sure_me = Se quitan de este dispositivo tus intentos, tu cuaderno y tu mapa de destrezas. No se pueden recuperar.
device-forget_sure_nobody = Se quita todo lo que se hizo sin código de estudiante, también lo de otras personas. No se puede recuperar.
device-forget_sure_all = Se quita el trabajo de todas las personas en este dispositivo, con borradores y ajustes. No se puede recuperar.
device-forget_yes = Olvidarlo
device-forget_no = Conservarlo
device-forgotten = Olvidado.
device-aside = Lo que quedó apartado
device-aside_about = Intentos anteriores que dejaron sitio a un comienzo nuevo, y cosas que no se pudieron leer. No estorban a nadie. Guarda una para mirarla o para dársela a alguien que pueda.
device-aside_save = Guardar
device-aside_some = { $n ->
    [one] Una cosa guardada no se pudo leer. Quedó apartada.
   *[other] { $n } cosas guardadas no se pudieron leer. Quedaron apartadas.
}
device-aside_go = Ver lo que quedó apartado
