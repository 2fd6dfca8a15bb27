### La página sin conexión, y versiones nuevas de ella.

offline-ready = Desde ahora esta página también se abre sin conexión.
offline-new = Hay una versión nueva de esta página. Lo que hiciste queda guardado.
offline-take = Usar la versión nueva
