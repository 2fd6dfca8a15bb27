### Una página para docentes.

teach-title = Para docentes
teach-lede = De qué puede descargarte esta mesa, cómo encajarla en un curso y qué no puede decirte.

teach-before = Antes de la práctica
    .a = La mitad de una práctica de pulso se va en «no hay señal» y en por qué se multiplica por cuatro. Deja que esa mitad ocurra en casa, hasta que aburra.
    .b = Da a todos un mismo enlace con una semana de antelación: «Primer montaje» a quien nunca ha visto una unidad de registro, y después una mesa con una avería que nombrar. Bastan veinte minutos.
    .c = Pide preparación, no una nota: dos ensayos seguidos con corazones distintos y 16 de 20 puntos o más.
teach-links = Enlaces, archivos, códigos
    .a = Todo lo que un enlace necesita está detrás de su #. No se pregunta a ningún servidor, y nada sale del dispositivo de un estudiante si no lo entrega.
    .b = Con una clave tuya y un código suyo, cada estudiante encuentra un corazón propio, y tú puedes abrir ese mismo.
    .c = Lo que vuelve es un archivo o una línea de texto con cada acción. Se comprueba haciéndolo todo otra vez.
teach-class = Mirar una clase
    .a = Suelta los archivos en la vista de clase. La primera lista es la de quienes aún no están a punto; la segunda, la de lo que la clase entiende mal.
    .b = Abre cualquier intento para ver su tira y su balance como los vio el estudiante.
    .c = En el aula, muestra una avería en la tira grande, pregunta qué es y después remédiala.
teach-fair = Qué es justo
    .a = Un recuento se juzga dentro de la propia ventana del estudiante, la aritmética con sus propios números, y el registro entero solo decide si una frecuencia es verosímil.
    .b = Una tolerancia de dos latidos en torno a la media de un minuto suspendería a cuatro de cada diez estudiantes que cuentan bien quince segundos. La vista previa de equidad lo muestra con lo que tú elijas.
    .c = Un campo que no se puede leer no cuesta nada. Un latido sobre un cursor no se le reprocha a nadie.
teach-limits = Lo que no puede hacer
    .a = La página corre en el dispositivo del estudiante. Un resultado muestra que sus acciones llevan a sus respuestas; no puede mostrar quién las hizo, ni con qué ayuda.
    .b = El sujeto es simulado, a partir de cifras publicadas donde las hay. Sirve para enseñar la medida, no para diagnosticar, y no sustituye la práctica supervisada de nadie.
    .c = Antes de poner un sensor a una persona, deciden las normas locales, las reglas de tu institución y los profesionales de la salud responsables.
teach-hour = Una hora en el aula
    .a = Diez minutos: dos averías parecidas en la tira grande; la clase dice qué prueba las distingue.
    .b = Treinta minutos: por parejas registran en la mesa real, marcan quince segundos, cuentan, calculan e intercambian las hojas.
    .c = Diez minutos: todas las frecuencias en la pizarra, con sus bandas. ¿Por qué difieren, y cuánto pueden diferir?
    .d = Diez minutos: lo mismo después del ejercicio, con ventanas más cortas, y la pregunta de qué cuesta la ventana más corta.
