### Guardar los intentos en este dispositivo, y qué puede ir mal con ello.

kept-never = nada de este intento todavía
kept-full = A este dispositivo no le queda sitio para esta página. Guardado de este intento: { $when }. Lo que hagas ahora solo está en esta página: entrégalo o guarda tus registros antes de cerrarla, o haz sitio y continúa.
kept-crowded = Este dispositivo ya guarda tantos intentos como puede, y este no se guarda. Abre «Este dispositivo» al pie de la página, olvida uno y continúa. Guardado de este intento: { $when }.
room-title = Este dispositivo guarda { $n } intentos, y ninguno más
room-text = Nada se tira si tú no lo dices. ¿Ya no necesitas la mitad más antigua de los tuyos?
room-others = Todos son de otras personas, así que se quedan. Este intento entonces no se guarda: guarda el archivo de resultado antes de cerrar la página.
room-forget = { $n ->
    [one] Olvidar el más antiguo mío
   *[other] Olvidar los { $n } más antiguos míos
}
room-back = Volver al inicio
room-without = Empezar sin guardarlo
kept-off = Este navegador no guarda nada para esta página, como en una ventana privada. Guardado de este intento: { $when }. Vive mientras la página esté abierta: entrégalo o guarda tus registros antes de cerrarla.
kept-again = Este intento se guarda de nuevo, con todo lo que has hecho.
kept-elsewhere = Este intento está abierto en otra pestaña, que es la que lo guarda. Se guarda lo que hagas allí; lo que hagas aquí, no. Continúa en la otra pestaña, o ciérrala y vuelve a cargar esta página.
kept-overtaken = La otra pestaña está cerrada, y lo que se hizo allí está guardado. Lo que se ha hecho aquí desde entonces, no. Vuelve a cargar esta página para continuar desde allí.
kept-mended = Una de las dos copias de este intento estaba dañada. La otra estaba bien: está guardado todo hasta { $when }.
kept-damaged = Lo que se guardó de este intento está dañado y no se puede leer. Queda apartado en este dispositivo; esta es una mesa nueva.
kept-unusable = Hay un intento guardado de { $when }, pero no se puede continuar con él: { $told } Queda apartado en este dispositivo, no se ha tirado; esta es una mesa nueva.
error-kept_version = lo guardó otra versión de esta página (forma { $found }).

refusal-world_over = Esta mesa ha funcionado todo lo que puede funcionar una. Lo registrado aún se puede medir; una semilla nueva abre otra mesa.
refusal-text_too_long = Caben { $max } letras.
error-file_value = { $file }, muestra { $sample }: su valor sería { $found }, que no corresponde a nada de una mesa.
