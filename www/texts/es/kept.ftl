### Guardar los intentos en este dispositivo, y qué puede ir mal con ello.

kept-never = nada de este intento todavía
kept-full = A este dispositivo no le queda sitio para esta página. Guardado de este intento: { $when }. Lo que hagas ahora solo está en esta página. Entrégalo o guarda tus grabaciones antes de cerrar la página, o haz sitio.
kept-crowded = Este dispositivo no puede guardar más intentos, así que este no se guarda. Abre «Este dispositivo» al pie de la página y borra uno. Guardado de este intento: { $when }.
room-title = Este dispositivo guarda { $n } intentos, y ninguno más
room-text = No se borra nada si tú no lo dices. ¿Necesitas aún la mitad más antigua de tus intentos?
room-others = Todos son de otras personas, así que se quedan. Entonces este intento no se guarda. Guarda el archivo de resultado antes de cerrar la página.
room-forget = { $n ->
    [one] Borrar el más antiguo mío
   *[other] Borrar los { $n } más antiguos míos
}
room-back = Volver al inicio
room-without = Empezar sin guardarlo
kept-off = Este navegador no guarda nada para esta página, como en una ventana privada. Guardado de este intento: { $when }. El intento se pierde al cerrar la página. Entrégalo o guarda antes tus grabaciones.
kept-again = Este intento se guarda otra vez, con todo lo que hiciste.
kept-elsewhere = Este intento está abierto en otra pestaña. Se guarda lo que hagas allí; lo que hagas aquí, no. Continúa en la otra pestaña, o ciérrala y vuelve a cargar esta página.
kept-overtaken = La otra pestaña está cerrada, y lo que hiciste allí está guardado. Lo que hiciste aquí desde entonces no está guardado. Vuelve a cargar esta página para continuar desde allí.
kept-mended = Una de las dos copias de este intento estaba dañada. La otra estaba bien. Está guardado todo hasta { $when }.
kept-damaged = La copia guardada de este intento está dañada y no se puede leer. Se queda en este dispositivo. Aquí empiezas otra vez.
kept-unusable = Hay un intento guardado de { $when }, pero no se puede continuar: { $told } Se queda en este dispositivo. Aquí empiezas otra vez.
error-kept_version = lo guardó otra versión de esta página (forma { $found }).

refusal-world_over = Este intento ha llegado a su límite de tiempo. Aún puedes medir lo que grabaste. Una semilla nueva empieza otra vez.
refusal-text_too_long = Puedes escribir como mucho { $max } letras.
error-file_value = { $file }, muestra { $sample }: { $found } es demasiado grande para una señal de pulso.
