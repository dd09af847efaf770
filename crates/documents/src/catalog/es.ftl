# Lo que leen estudiantes, familias y asistentes. Palabras cortas, una idea por frase.
# Español de México y de las escuelas de EE. UU., de ustedes.

language-name = Español
language-choose = Idioma

# Estados: cada palabra va junto a su forma.
state-due = Lean ya
state-late = Tarde { $time }
state-saved = Guardado
state-kept = Guardado solo aquí
state-locked = Cerrada a las { $time }

# Algo raro en la mesa.
odd-leak = Fuga
odd-spill = Derrame
odd-foam = Espuma
odd-late = Tarde
odd-bumped = Golpe
odd-not-read = Sin leer

# La página para entrar.
join-title = Entren a su grupo
join-lead = Usen dos códigos. Uno es de esta clase y otro es de su grupo.
join-period = Código de la clase
join-period-hint = Está en la pared.
join-group = Código del grupo
join-group-hint = Está en su bandeja. También sirve el código de una bolsa.
join-bag = Tienen la bolsa { $bag }.
join-bag-wrong = No es mi bolsa
join-go = Entrar
join-fault = Los códigos no van juntos, o no sirven ahora. Miren otra vez y pongan los dos de nuevo.
join-wait = Son muchos intentos. Esperen { $seconds } segundos y prueben de nuevo.
join-brings = Este aparato trae { $count } lecturas. Entren y se mandan.
join-page = Pared, asistente o ronda
join-page-code = Código de la página
join-page-go = Abrir la página

# La página de la mesa: arriba.
bench-title = Grupo { $group }, período { $period }
bench-title-named = { $label }, grupo { $group }, período { $period }
bench-invented = Clase inventada. Nada de esto es real.
bench-rehearsal = Ensayo. Nada de esto cuenta.
bench-all-saved = Todo guardado
bench-kept-count = { $count } solo aquí
bench-no-link = No hay línea con su maestra o maestro. Sigan. Nada se pierde.
bench-no-words = Las palabras de ese idioma aún no están aquí. Prueben cuando vuelva la línea.
bench-stay = No cierren esta página hasta que todo se guarde.
bench-out = Este aparato ya no está en el grupo. Entren otra vez para mandar todo.
bench-out-go = Entrar otra vez
bench-no-script = Esta página usa scripts. Actívenlos o escriban en papel.
bench-no-store = Aquí no se puede guardar. Escriban también en papel.
bench-no-bags = Hoy su grupo no tiene bolsas.
bench-stand-in = Hoy su grupo usa datos de la clase.

# Pestañas y relojes.
bench-bags = Sus bolsas
bench-now = ahora
bench-then = luego
bench-in = en { $time }
bench-zero-next = falta el cero
bench-zero-go = Leer la altura cero
bench-done = lista
bench-opened = abierta
bench-lost = perdida
bench-still = espera
bench-reading-of = la lectura de los { $minute } minutos
bench-reading-zero = la lectura cero
bench-reading-between = una lectura de más
bench-next-in = la otra en
bench-wait = La próxima lectura empieza en
bench-wait-minute = a los { $minute } minutos
bench-wait-bag = bolsa { $bag }
bench-between = Leer una bolsa de más
bench-stopped = Los relojes están parados
bench-stopped-lead = Esperen a su maestra o maestro. Nada va tarde.
bench-not-begun = Su maestra o maestro inicia el reloj.
bench-over = Se acabó la hora.

# Escribir una altura.
bench-ask = ¿Qué tan alta está la tarjeta de la bolsa { $bag }?
bench-how = La regla en la mesa. El ojo a la altura. No toquen la bolsa.
bench-height = Altura en milímetros
bench-tens = decenas
bench-ones = unidades
bench-two-taps = Dos toques y queda escrito. Lo pueden cambiar.
bench-type = 50 o más, o un medio
bench-type-label = Altura en mm, como 104 o 12.5
bench-type-go = Escribir
bench-type-fault = Escriban un número de 0 a 250.
bench-keys = Volver a las teclas
bench-written = Bolsa { $bag }: { $mm } mm.
bench-change = Cambiar
bench-change-ask = ¿Qué va en la bolsa { $bag }, { $reading }?
bench-change-lead = Dice { $mm } mm. El número viejo también se guarda.
bench-change-stop = Dejar así
bench-readings = Lo que escribieron
bench-changed = decía { $mm } mm

# Cuando una altura parece rara.
guard-please = Revisen, por favor.
guard-before = A los { $minute } minutos la tarjeta estaba en { $mm } mm.
guard-before-zero = Al inicio la tarjeta estaba en { $mm } mm.
guard-centimeter = ¿Son { $mm } mm o { $cm } cm?
guard-inch = ¿Son { $mm } mm o leyeron pulgadas?
guard-fell = Ahora está más baja. ¿Está bien cerrada?
guard-jumped = Es un salto grande.
guard-too-high = Una bolsa así no sube tanto.
guard-again = Leer otra vez
guard-keep = { $mm } mm
guard-write-centimeter = { $cm } cm, poner { $mm }
guard-write-inch = { $inch } pulg, poner { $mm }
guard-leak = { $mm } mm, y hay fuga

# Cosas raras.
bench-odd = ¿Algo raro?
bench-odd-lead = Toquen lo que ven en la bolsa { $bag }.
bench-odd-noted = { $odd }: bolsa { $bag }, { $time }

# La curva propia.
bench-curve = Su curva
bench-curve-title = Altura de la tarjeta de sus bolsas
bench-curve-empty = Su primera lectura inicia la curva.
bench-curve-bench = mesa
bench-curve-bag = Bolsa { $bag }
bench-curve-list = Bolsa { $bag }: { $list }.
bench-curve-point = { $mm } mm a los { $minute } min
bench-curve-rose = La bolsa { $bag } subió { $mm } mm en { $minute } minutos.
bench-curve-fell = La bolsa { $bag } bajó { $mm } mm en { $minute } minutos.
bench-curve-flat = La bolsa { $bag } no subió en { $minute } minutos.
bench-curve-ruler = Las rayas cortas van 1 mm arriba y abajo. Una regla no se puede leer mejor.

# La idea.
bench-guess = Su predicción
bench-guess-lead = ¿Cuántos mm va a subir cada tarjeta, de la altura cero a la última lectura?
bench-guess-bag = Bolsa { $bag }, en mm
bench-guess-why = ¿Por qué piensan eso? No pongan nombres.
bench-guess-save = Guardar la predicción
bench-guess-fault = Pongan un número de 0 a 250 para cada bolsa.
bench-guess-locks = Después de la primera altura cero no pueden cambiarla.
bench-guess-says = Bolsa { $bag } unos { $mm } mm.
bench-guess-skip = No hay predicción. Escriban una abajo, o toquen otra vez para seguir sin ella.
bench-guess-none = No escribieron una predicción.

# Qué hacer.
bench-steps = Qué hacer
bench-plan = Su plan
step-goggles = Pónganse los lentes.
step-labels = Busquen sus bolsas. Lean cada etiqueta.
step-each = Pongan esto en cada bolsa:
step-dry = Pongan: { $things }.
step-water = Echen { $amount } de agua a { $degrees }.
step-close = Saquen el aire y cierren la bolsa.
step-rub = Froten la bolsa suave hasta que nada quede seco.
step-bench = Déjenla plana en la mesa. Pongan la tarjeta encima.
step-towel = Déjenla plana entre las toallas. Pongan la tarjeta encima.
step-tray = Déjenla en la bandeja tibia. Pongan la tarjeta encima.
step-zero = Lean la altura cero ya mismo.
thing-yeast = levadura
thing-nothing = nada más
thing-of = { $amount } { $thing }

# Después de la última lectura.
bench-after = Después de la última lectura
bench-after-open = Abran las bolsas sobre la tina.
bench-after-goggles = Dejen los lentes puestos hasta que toda bolsa esté abierta y la mesa limpia.
bench-after-tap = Toquen cuando una bolsa esté abierta.
bench-after-bag = La bolsa { $bag } está abierta
bench-after-done = Todas las bolsas están abiertas. Lávense las manos.

# Dos alturas para una lectura.
bench-two = Dos alturas para la bolsa { $bag }
bench-two-lead = Las dos se guardan. Su maestra o maestro escoge una.
bench-two-line = { $reading }: { $mm } mm, { $who }, { $time }
who-device = de este aparato
who-group = de su grupo
who-teacher = de su maestra o maestro
who-paper = de papel

# El aparato: qué guarda, a dónde manda y cómo olvida.
bench-device = Este aparato
bench-list-show = Ver lo no mandado en una lista
bench-list-hide = Quitar la lista
bench-list-lead = Cópienlo en papel si hace falta.
bench-list-empty = No falta nada por mandar.
bench-list-bag = Bolsa
bench-list-minute = Minuto
bench-list-mm = mm
bench-list-time = Hora
bench-list-what = Qué
bench-refused = Hay { $count } datos que no entraron. Avisen a su maestra o maestro.
bench-others = { $count } datos de otro grupo esperan aquí. Se mandan cuando ese grupo entre otra vez.
bench-pass = Otro grupo
bench-pass-lead = Su grupo deja este aparato. Luego entra el otro grupo.
bench-pass-unsent = Faltan { $count } datos por mandar. Se quedan aquí para su grupo.
bench-pass-fault = Ahora no hay línea. Esperen y después pasen el aparato.
bench-pass-sure = Sí, otro grupo
bench-move = Dirección nueva
bench-move-lead = ¿Les dieron una dirección nueva? Pónganla aquí.
bench-move-label = Dirección, como 192.168.1.20:8080
bench-move-go = Ir allá
bench-move-fault = Eso no es una dirección. Cópienla de la pared.
bench-move-keeps = Lo que falta mandar va con ustedes.
bench-carry = Llegaron { $count } datos de una dirección vieja.
bench-carry-lead = ¿Los trajeron ustedes?
bench-carry-take = Sí, mandarlos
bench-carry-leave = No, dejarlos
bench-clear = Borrar este aparato
bench-clear-lead = Háganlo al final de la hora. La otra clase empieza de cero.
bench-clear-unsent = Falta mandar: { $count }. Copien la lista primero.
bench-clear-sure = Sí, borrar

# The wall page.
wall-title = Período { $period }, hasta el timbre
wall-period = Período { $period }
wall-before = El período { $period } empieza a las
wall-read-now = Lean ya: grupos
wall-read-one = Lean ya: grupo
wall-next-group = Grupo
wall-next-in = en { $time }
wall-next-zero = lectura cero en { $time }
wall-nobody = Ahora nadie lee
wall-stopped = Todos los relojes están parados
wall-stopped-lead = Dejen las bolsas. Hagan lo que diga su maestra o maestro.
wall-past-bell = Ya sonó el timbre. Abran las bolsas en la tina.
wall-ended = Esta clase terminó.
wall-curves = Cómo suben las tarjetas
wall-curves-day = Cómo suben las tarjetas, todas las clases
wall-curves-lead = Fina: una bolsa. Gruesa: la media. La abrió su maestra o maestro.
wall-join = Entren con su grupo
wall-join-address = Abran esta dirección:
wall-join-code = Código de la clase:
wall-join-group = El código del grupo está en su bandeja.
wall-how = Cómo leer
wall-how-1 = Esperen el número de su grupo.
wall-how-2 = Lean todas sus bolsas, una por una.
wall-how-3 = Anoten cada altura en mm en seguida.
wall-rule-hands = No toquen las bolsas
wall-rule-ruler = La regla sobre la mesa
wall-rule-eye = El ojo a la altura de la tarjeta
wall-stand-in = Trabaja con datos de la clase: { $groups }
wall-ruler = El período como regla: de { $start } al timbre a las { $bell }. Son las { $now }.
wall-bell = timbre
phase-set-up = preparar
phase-read = leer cada { $minutes } minutos
phase-vent = abrir
phase-clean = limpiar
link-silent = No responde la computadora de su maestra o maestro. Los relojes siguen aquí.

# The aide's page.
aide-title = Listas de ayuda
aide-lead = Elija una mesa.
aide-stays = Las marcas quedan en este aparato.
aide-done = { $done } de { $all } listas
aide-trays = Bandejas
aide-trays-caution = Lentes para todos. En este salón no se come.
aide-tray = Período { $period }, grupo { $group }: { $bags } bolsas con etiqueta
aide-water = Agua
aide-water-caution = El agua muy caliente quema. La sirve un adulto.
aide-water-hot = Esta agua quema. Solo la sirve la maestra o el maestro.
aide-jug = Período { $period }: { $hot } de agua caliente y { $cold } de fría. Debe marcar { $degrees } °C.
aide-jug-teacher = Período { $period }: mezcla la maestra o el maestro { $makes } a { $degrees } °C.
aide-stock = Enzima
aide-stock-caution = El polvo de enzima daña los pulmones. Lea la etiqueta. Use lentes.
aide-stock-make = Ponga { $takes }. Llene con agua hasta { $makes }. Mezcle.
aide-stock-label = Escriba en el frasco: { $name }, sirve hasta las { $until }.
aide-stock-shake = Agite el frasco antes de cada clase.
aide-vent = Abrir bolsas
aide-vent-goggles = Lentes puestos.
aide-vent-open = Abra cada bolsa sobre la tina, lejos de la cara.
aide-vent-pour = Vacíe en el lavabo. Deje correr el agua.
aide-vent-window = Abra una ventana.
aide-vent-count = Cuente las bolsas. Ninguna va a casa.
aide-clean = Limpiar
aide-clean-cloth = Limpie cada mesa con un trapo mojado.
aide-clean-floor = Seque el piso.
aide-clean-rulers = Lave las reglas y cuente cuántas hay.
aide-clean-trays = Ponga las bandejas en orden.
aide-clean-hands = Todos se lavan las manos con jabón.

# La página en la que un grupo planea sus bolsas.
together-title = Planeen sus bolsas
together-lead = Cambien una sola cosa. Lo demás queda igual. Luego entreguen el plan.
together-question = La clase pregunta: { $question }
together-cupboard = En la alacena
together-asks = Su pregunta
together-asks-lead = ¿Qué quieren saber?
together-change = ¿Qué van a cambiar?
together-change-lead = Una sola cosa.
together-change-none = Elijan una cosa
together-food = la comida
together-food-amount = cuánta comida
together-extra = otra cosa, como sal
together-water-temperature = qué tan tibia está el agua
together-water = cuánta agua
together-yeast-amount = cuánta levadura
together-enzyme = la enzima
together-levels = ¿Qué va en sus bolsas?
together-levels-lead = Escriban un tipo de bolsa en cada línea. Pongan la unidad.
together-level = Tipo { $number }
together-beside = ¿Con qué las van a comparar?
together-beside-lead = Con uno de sus tipos o con una bolsa de la clase.
together-same = ¿Qué queda igual?
together-same-lead = Todas las bolsas de la clase tienen esto:
together-same-bag = bolsa
together-keeps = ¿Qué más tienen todas sus bolsas?
together-keeps-lead = Así: white sugar + 0.5 g
together-bags = ¿Cuántas bolsas de cada tipo?
together-bags-lead = Una sola bolsa puede ser suerte.
together-expects = ¿Qué creen que va a pasar?
together-because = ¿Por qué? No escriban nombres.
together-look = Mirar otra vez
together-hand-in = Entregar el plan
together-think = Piensen en esto
together-think-blank = Escriban primero qué cambian y qué va en sus bolsas.
together-think-none = Bien. Ya lo pueden entregar.
together-handed-in = Ya está entregado. Su maestra o maestro lo va a leer.
together-approved = Su plan está aprobado. Van a hacer estas bolsas.
together-returned = Les preguntan: { $question }
together-returned-lead = Cambien su plan si quieren, y entreguen otra vez.
together-ask-unsaid = ¿Otro grupo puede hacer sus bolsas con lo que escribieron?
together-ask-cupboard = ¿Todo está hoy en la alacena?
together-ask-two-things = ¿Cuántas cosas no son iguales en sus bolsas?
together-ask-change = ¿Qué cosa no es igual en sus bolsas?
together-ask-alike = ¿Hay dos bolsas hechas del mismo modo?
together-ask-compare = ¿Con qué van a comparar sus bolsas?
together-ask-luck = ¿Cómo van a saber que no fue suerte?
together-ask-gas = ¿Qué cosa en sus bolsas puede hacer gas?
together-ask-hot = ¿Qué hace el agua tan caliente a la piel y a la levadura?
together-ask-make = ¿Cómo lo van a medir?
