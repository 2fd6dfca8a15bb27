### La página sin conexión, y versiones nuevas de ella.

offline-ready = Desde ahora esta página también se abre sin conexión.
offline-new = Hay una versión nueva de esta página. Lo que has hecho queda guardado.
offline-take = Cambiar a ella
