### Una página para docentes.

teach-title = Para docentes
teach-lede = Qué pueden hacer por ti estos escenarios, cómo encajan en un curso y qué no pueden decirte.

teach-before = Antes de la práctica
    .a = La mitad de una práctica de pulso se va en «no hay señal» y en por qué se multiplica por cuatro. Deja que esa mitad ocurra en casa, hasta que sea fácil.
    .b = Da a todos un enlace una semana antes. Usa «Primer montaje» para quien nunca ha visto un registrador. Después usa un escenario con un fallo que nombrar. Bastan veinte minutos.
    .c = Pide que estén listos, no una nota: dos intentos seguidos con corazones distintos y 16 de 20 puntos o más.
teach-links = Enlaces, archivos, códigos de resultado
    .a = Todo lo que un enlace necesita está detrás de su #. No se pregunta a ningún servidor. Nada sale del dispositivo de un estudiante si no lo entrega.
    .b = Con tu clave y su ID de estudiante, cada estudiante recibe un corazón propio. Tú puedes abrir el mismo.
    .c = Recibes un archivo o una línea de texto con cada acción. Se comprueba al reproducir todas las acciones.
teach-class = Mirar una clase
    .a = Suelta los archivos en la página «Resultados de la clase». La primera lista muestra quién no está listo. La segunda muestra en qué falla la clase.
    .b = Abre cualquier intento para ver su trazo y su resultado como los vio el estudiante.
    .c = En el aula, muestra un fallo en la pantalla grande, pregunta qué es y después arréglalo.
teach-fair = Qué es justo
    .a = Un recuento se juzga en la propia ventana de conteo del estudiante, y la aritmética con sus propios números. La grabación entera solo decide si una frecuencia cardíaca es verosímil.
    .b = Supón que permites dos latidos en torno a la media de un minuto. Entonces suspenderían cuatro de cada diez estudiantes que cuentan bien quince segundos. «¿Es justo?» lo muestra con lo que tú elijas.
    .c = Un espacio en blanco que no se puede leer no cuesta nada. Un latido sobre un cursor puede contarse o no.
teach-safety = Seguridad en el aula
    .a = Usa solo equipo certificado para personas. Esa es la idea de IEC 60601-1: incluso con un fallo, casi ninguna corriente puede pasar por la persona.
    .b = Nunca anules ni evites el contacto de tierra de un enchufe. No cortes la clavija de tierra ni uses un adaptador sin tierra. No conectes a una persona a tierra. Quien toca tierra ofrece a una corriente de fallo un camino de vuelta por el cuerpo.
    .c = Retira enseguida un cable o enchufe dañado. Mantén bebidas y manos mojadas lejos de la corriente. Limpia sensor y correa entre una persona y otra. Usa correas sin látex para quien tenga alergia al látex.
    .d = No todos deben hacer ejercicio, pujar, contener la respiración o usar hielo. Cualquiera puede decir que no, sin razones y sin perder nada. Deciden las normas locales, tu institución y los profesionales de la salud habilitados.
    .e = Pide consentimiento antes de grabar a una persona, y di quién verá la grabación. Las normas de tu institución dicen cómo.
    .f = Si alguien se marea, para enseguida. Que se siente o se acueste. Pide ayuda como digan las normas de tu institución, y deja el resto a los profesionales de la salud habilitados.
teach-limits = Lo que no puede hacer
    .a = La página funciona en el dispositivo del estudiante. Un resultado muestra que sus acciones llevan a sus respuestas. No puede mostrar quién las hizo, ni con qué ayuda.
    .b = El sujeto es simulado, a partir de números publicados donde los hay. Sirve para enseñar la medida, no para diagnosticar. No sustituye la práctica supervisada.
    .c = Antes de poner un sensor a una persona, sigue las normas de seguridad locales, las de tu institución y a los profesionales de la salud responsables.
teach-hour = Una hora en el aula
    .a = Diez minutos: muestra dos fallos parecidos en la pantalla grande. La clase dice qué prueba los distingue.
    .b = Treinta minutos: por parejas graban con equipo real, separan A y B quince segundos, cuentan, calculan e intercambian las hojas de trabajo.
    .c = Diez minutos: escribe todas las frecuencias cardíacas en la pizarra, con su incertidumbre. ¿Por qué difieren, y cuánto pueden diferir?
    .d = Diez minutos: haz lo mismo después del ejercicio, con ventanas de conteo más cortas. Pregunta qué cuesta la ventana de conteo más corta.
