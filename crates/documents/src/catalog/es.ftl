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
join-brings = Lecturas en este aparato: { $count }. Entren y se mandan.
join-page = Pared, asistente o ronda
join-page-code = Código de la página
join-page-go = Abrir la página

# La página de la mesa: arriba.
bench-title = Grupo { $group }, período { $period }
bench-title-named = { $label }, grupo { $group }, período { $period }
bench-invented = Clase inventada. Nada de esto es real.
bench-rehearsal = Ensayo. Nada de esto cuenta.
bench-all-saved = Todo guardado
bench-come = { $count } por mandar
bench-kept-count = { $count } solo aquí
bench-no-link = No hay línea con su maestra o maestro. Sigan. Nada se pierde.
bench-no-words = Las palabras de ese idioma aún no están aquí. Prueben cuando vuelva la línea.
bench-stay = No cierren esta página hasta que todo se guarde.
bench-out = Este aparato ya no está en el grupo. Entren otra vez para mandar todo.
bench-out-go = Entrar otra vez
bench-no-script = Esta página usa scripts. Actívenlos o escriban en papel.
bench-no-store = Aquí no se puede guardar. Escriban también en papel.
bench-no-bags = Hoy su grupo no tiene bolsas.
bench-older-plan = «(plan { $version })» tras un nombre: hecha como decía el plan { $version }, antes de cambiarlo.
bench-plan-own = Planear sus propias bolsas

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
guard-high-zero = Una bolsa recién cerrada está casi plana. ¿Está la regla sobre la mesa?
guard-again = Leer otra vez
guard-keep = { $mm } mm
guard-write-centimeter = { $cm } cm, poner { $mm }
guard-write-inch = { $inch } pulg, poner { $mm }
guard-leak = { $mm } mm, y hay fuga

# Cosas raras.
bench-odd = ¿Algo raro?
bench-odd-lead = Toquen lo que ven en la bolsa { $bag }. ¿Es otra bolsa? Toquen primero esa bolsa.
bench-odd-noted = { $odd }: bolsa { $bag }, { $time }
bench-odd-back = Quitarlo

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
bench-pour = ¿A cuánto estaba el agua de { $bags } al echarla?
bench-pour-far = Su plan dice { $degrees }. Miren otra vez, o toquen de nuevo para anotar lo suyo.
bench-pour-hot = El agua a más de 60 °C (140 °F) quema y mata la levadura. ¿Son °C o °F? Miren otra vez, o toquen de nuevo para anotarlo.
bench-pour-fault = Anoten lo que marca el termómetro. Luego toquen °C o °F.
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
thing-nothing = nada más
thing-of = { $amount } de { $thing }

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
bench-refused = Datos que no entraron: { $count }. Avisen a su maestra o maestro.
bench-others = Datos de otro grupo que esperan aquí: { $count }. Se mandan cuando ese grupo entre otra vez.
bench-pass = Otro grupo
bench-pass-lead = Su grupo deja este aparato. Luego entra el otro grupo.
bench-pass-unsent = Datos por mandar: { $count }. Se quedan aquí para su grupo.
bench-pass-fault = Ahora no hay línea. Esperen y después pasen el aparato.
bench-pass-sure = Sí, otro grupo
bench-move = Dirección nueva
bench-move-lead = ¿Hay una dirección nueva? Está en la pared. Pónganla aquí.
bench-move-label = Dirección, como 192.168.1.20:8080
bench-move-go = Ir allá
bench-move-fault = Eso no es una dirección. Cópienla de la pared.
bench-move-keeps = Lo que falta mandar va con ustedes.
bench-carry = Datos que llegaron de una dirección vieja: { $count }.
bench-carry-lead = ¿Los trajeron ustedes?
bench-carry-take = Sí, mandarlos
bench-carry-leave = No, dejarlos
bench-clear = Borrar este aparato
bench-clear-lead = Háganlo al final de la hora. La otra clase empieza de cero.
bench-clear-unsent = Falta mandar: { $count }. Copien la lista primero.
bench-clear-fault = Ahora no hay conexión. No se borró nada. Esperen la conexión. ¿Hoy ya no habrá? Copien la lista y toquen otra vez.
bench-clear-sure = Sí, borrar

# What the teacher gives or opens to a group.
lent-class = Datos de la clase
lent-class-lead = Otros grupos leyeron estas bolsas. Son como las suyas.
lent-simulated = Prueba simulada: no medida
lent-simulated-lead = Una computadora hizo estos números. Nadie leyó una bolsa.
lent-never = No cuentan en los resultados de la clase.
lent-next = Miren estos números. Escriban en papel lo que ven y por qué creen que es así.
lent-empty = Todavía no hay números.
lent-table = Altura de cada tarjeta sobre la mesa, en mm:
lent-bag = Bolsa { $number }
class-empty = Nadie leyó todavía una bolsa así.
class-bag = { $treatment }: 1 bolsa, { $high } mm sobre su inicio a los { $minute } min.
class-same = { $treatment }: { $bags } bolsas, { $high } mm sobre el inicio a los { $minute } min.
class-range = { $treatment }: { $bags } bolsas, de { $low } a { $high } mm sobre el inicio a los { $minute } min.
found-head = Lo que encontró la clase
found-lead = Usa las bolsas de todos los grupos. Lo abrió su docente.
found-nothing = Aquí no hay nada que comparar.
found-not-run = Todavía no se ha hecho: { $treatments }.
found-clear-more = Claro
found-clear-more-says = { $treatment } subió más que { $reference }.
found-clear-less = Claro
found-clear-less-says = { $treatment } subió menos que { $reference }.
found-leans-more = Parece
found-leans-more-says = { $treatment } puede subir más que { $reference }.
found-leans-less = Parece
found-leans-less-says = { $treatment } puede subir menos que { $reference }.
found-unclear = No se sabe
found-unclear-says = { $treatment } junto a { $reference }.
found-no-rise = No se ve que suba
found-no-rise-says = { $treatment } junto a { $reference }.
found-not-comparable = No se puede comparar
found-not-comparable-says = { $treatment } junto a { $reference }.
found-hangs = Sin las bolsas apartadas no sale igual.

# The wall page.
wall-lead = Para toda la clase: el tiempo hasta el timbre, quién lee ahora y quién sigue.
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
wall-curves-lead = Fina: una bolsa. Gruesa: la media. Sombra: qué tan lejos quedan las bolsas. La abrió su maestra o maestro.
wall-join = Entren con su grupo
wall-join-address = Abran esta dirección:
wall-join-code = Código de la clase:
wall-join-group = El código del grupo está en su bandeja.
wall-place = Entren o sigan aquí:
wall-place-square = La dirección, para cámaras
wall-how = Cómo leer
wall-how-1 = Esperen el número de su grupo.
wall-how-2 = Lean todas sus bolsas, una por una.
wall-how-3 = Anoten cada altura en mm en seguida.
wall-rule-hands = No toquen las bolsas
wall-rule-ruler = La regla sobre la mesa
wall-rule-eye = El ojo a la altura de la tarjeta
wall-lent-class = Datos de la clase: grupo { $groups }
wall-lent-simulated = Prueba simulada, no medida: grupo { $groups }
wall-ruler = El período como regla: de { $start } al timbre a las { $bell }. Son las { $now }.
wall-bell = timbre
phase-set-up = preparar
phase-read = leer cada { $minutes } minutos
phase-vent = abrir
phase-clean = limpiar
link-silent = No responde la computadora de su maestra o maestro. Los relojes siguen aquí.

# The aide's page.
aide-title = Listas de ayuda
aide-lead = Una lista para cada mesa. Marque lo que está hecho y pase a la siguiente.
aide-stays = Las marcas quedan en este aparato.
aide-done = { $done } de { $all } listas
aide-trays = Bandejas
aide-trays-caution = Lentes para todos. En este salón no se come.
aide-tray = Período { $period }, grupo { $group }. Bolsas con etiqueta: { $bags }
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
together-bench = A sus bolsas
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
together-keeps-lead = Así: azúcar blanca + 0.5 g
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
together-ask-cupboard = ¿Todo eso está hoy en la alacena? ¿Cuánto va? Nada más puede ir en una bolsa.
together-ask-two-things = ¿Cuántas cosas no son iguales en sus bolsas?
together-ask-change = ¿Qué cosa no es igual en sus bolsas?
together-ask-alike = ¿Hay dos bolsas hechas del mismo modo?
together-ask-compare = ¿Con qué van a comparar sus bolsas?
together-ask-luck = ¿Cómo van a saber que no fue suerte?
together-ask-gas = ¿Qué cosa en sus bolsas puede hacer gas?
together-ask-hot = ¿Qué hace el agua tan caliente a la piel y a la levadura?
together-ask-make = ¿Cómo lo van a medir? ¿Cabe en la bolsa?

# En papel: el pie de cada página, las etiquetas, la hoja con la dirección del día.
page-sheet = Hoja
page-of = de
page-continued = sigue
page-invented = Clase inventada: ninguna lectura es real
page-rehearsal = Ensayo: ninguna lectura es real
page-not-printed = [?] está en lugar de letras o dibujos que aquí no se pueden imprimir.
label-margin = Impriman al 100 %. Hagan antes la hoja de prueba.
label-square = Código cuadrado de la bolsa { $bag }
label-card = Tarjeta de esta bolsa
label-card-once = Tarjeta: lean en el minuto { $last }
label-card-read = Tarjeta: lean cada { $every } min hasta el minuto { $last }
join-sheet-open = Abran esta dirección
join-sheet-camera = O usen una cámara
join-sheet-square = Código cuadrado de { $address }
join-sheet-class = Pongan el código de la clase. Está en la pared.
join-sheet-group = Pongan el código de su grupo. Está en su bandeja. También sirve el código de una bolsa.
join-sheet-again = ¿Se cerró la página? Ábranla otra vez aquí.

# Lo que sale mal, sea quien sea.
trouble-first = A la primera página
trouble-nowhere = Esa página no existe
trouble-nowhere-says = No hay nada en esta dirección. Mírenla otra vez, o vayan a la primera página.
trouble-not-yours = Esta página no es para ustedes.
trouble-wrong = Eso no se puede usar
trouble-failed = Eso no salió bien
trouble-failed-says = Lo ya guardado está a salvo. Prueben otra vez. Si sigue igual, miren en barm.log, junto a los datos.
trouble-full = El disco está lleno
trouble-full-says = La otra computadora ya no tiene lugar, y esto no se guardó ahí. Lo ya guardado está a salvo. Este aparato lo guarda y lo manda después.
trouble-unread = Eso no se puede leer
trouble-unread-says = Falta algo de lo que se mandó, o no va ahí. Abran la página otra vez.
trouble-too-much = Es mucho de una vez
trouble-too-much-says = Este aparato manda más de lo que escribe un grupo. Esperen un minuto y mándenlo otra vez. Lo ya guardado está a salvo.
trouble-method = Esta dirección no responde a eso.
trouble-far = Esta página solo se abre en la computadora del programa.
trouble-foreign = Esto no salió de una página de este programa. Abran la página otra vez.
trouble-stale = Esta hoja ya es vieja. Abran la página otra vez y mándenla de nuevo.
trouble-large = Eso es más de lo que cabe en esta dirección.
trouble-name = Este programa no responde a ese nombre. Usen la dirección que mostró al empezar. Otro nombre se da al empezar con --name.

# Nombres de lo que hay en la alacena.
larder-sugar-white = azúcar blanca
larder-sugar-brown-packed = azúcar morena, apretada
larder-sugar-brown-loose = azúcar morena, suelta
larder-sugar-powdered = azúcar glas
larder-fructose-powder = fructosa en polvo
larder-dextrose-monohydrate = dextrosa
larder-maltodextrin = maltodextrina
larder-honey = miel
larder-corn-syrup-light = jarabe de maíz claro
larder-corn-syrup-dark = jarabe de maíz oscuro
larder-hfcs = jarabe de maíz alto en fructosa
larder-malt-syrup = jarabe de malta
larder-maple-syrup = jarabe de arce
larder-molasses = melaza
larder-agave-syrup = jarabe de agave
larder-corn-starch = fécula de maíz
larder-cornmeal-degermed = harina de maíz gruesa, sin germen
larder-cornmeal-whole = harina de maíz gruesa, integral
larder-corn-flour-whole = harina de maíz fina, integral
larder-wheat-flour-white = harina de trigo blanca
larder-wheat-flour-whole = harina de trigo integral
larder-oat-flour = harina de avena
larder-rolled-oats = hojuelas de avena
larder-cooked-oats = avena cocida
larder-barley-malt-flour = harina de malta de cebada
larder-rice-flour = harina de arroz
larder-tapioca-pearl = perlas de tapioca
larder-potato-flakes = hojuelas de papa
larder-potato-flour = harina de papa
larder-milk-powder-nonfat = leche en polvo sin grasa
larder-milk-powder-instant = leche en polvo instantánea sin grasa
larder-milk-skim = leche descremada
larder-apple-juice = jugo de manzana
larder-grape-juice = jugo de uva
larder-applesauce = puré de manzana
larder-banana = puré de plátano
larder-raisins = pasas
larder-sweet-potato-raw = camote crudo
larder-sweet-potato-boiled = camote hervido
larder-sweet-potato-baked = camote al horno
larder-sucralose-packet = sobre de sucralosa
larder-aspartame-packet = sobre de aspartamo
larder-saccharin-packet = sobre de sacarina
larder-granulated-substitute-brown = sustituto de azúcar morena, granulado
larder-stevia-powder = estevia en polvo
larder-erythritol = eritritol
larder-salt = sal de mesa
larder-baking-soda = bicarbonato de sodio
larder-vinegar = vinagre blanco
larder-yeast-ady = levadura seca activa
larder-yeast-instant = levadura instantánea
larder-yeast-compressed = levadura fresca prensada
larder-lactase-drops = gotas de lactasa
larder-lactase-tablet = tableta de lactasa
larder-glucoamylase-powder = glucoamilasa en polvo
larder-glucoamylase-liquid = glucoamilasa líquida
larder-amylase-powder = amilasa en polvo (de hongo)
larder-bacterial-amylase = amilasa bacteriana en polvo
larder-invertase-liquid = invertasa líquida
larder-stock-lactase-drops = solución de gotas de lactasa
larder-stock-lactase-tablet = solución de lactasa
larder-stock-glucoamylase-powder = solución de glucoamilasa
larder-stock-glucoamylase-liquid = solución de glucoamilasa líquida
larder-stock-amylase-powder = solución de amilasa
larder-stock-bacterial-amylase = solución de amilasa bacteriana
larder-stock-invertase-liquid = solución de invertasa líquida
larder-yeast = levadura
larder-bags = bolsas
larder-cards = tarjetas
larder-labels = etiquetas
larder-cups = vasos
larder-spoons = cucharas
larder-bag-snack = chica
larder-bag-sandwich = de sándwich
larder-bag-quart = de un cuarto
larder-bag-gallon = de un galón
larder-word-no-food = sin alimento
larder-word-no-yeast = sin levadura
larder-word-no-enzyme = sin enzima
larder-word-no-salt = sin sal
larder-word-water-of = agua de
larder-word-white-flour = harina blanca
larder-word-glucoamylase = glucoamilasa
larder-word-lactase = lactasa
larder-word-amylase = amilasa
larder-word-invertase = invertasa

# Papel que tienen los estudiantes en la mano: lo que va en cada hoja.
hand-page = página { $page }
hand-teacher-bench = Mesa de su maestra o maestro, período { $period }

# La tarjeta de la mesa.
card-name = Tarjeta de la mesa
card-question = Su pregunta
card-question-own = ¿Qué quieren saber? Pónganlo como pregunta.
card-known = Esto ya se sabe
card-known-lead = Revisen con sus bolsas si es así.
card-known-food = La levadura hace gas con la comida que puede usar.
card-known-food-amount = Más comida puede dar más gas, hasta un punto.
card-known-enzyme = Una enzima corta la comida en trozos chicos. Así la levadura la puede usar.
card-known-enzyme-amount = Más enzima corta la comida más rápido, hasta un punto.
card-known-yeast = Cada tipo de levadura despierta a su paso.
card-known-yeast-amount = Más levadura hace gas más rápido.
card-known-water = Más agua hace la mezcla más suelta. Así la levadura va a otro paso.
card-known-water-temperature = El agua tibia apura a la levadura. El agua muy caliente la mata.
card-known-extra = La sal y lo agrio pueden frenar a la levadura.
card-known-bag = El mismo gas sube menos la tarjeta en una bolsa grande.
card-known-card = Una tarjeta pesada aplasta la bolsa.
card-known-lies = Una bolsa tibia hace gas más rápido que una fría.
card-change = Cambiamos
card-keep = Dejamos igual
card-keep-lead = Todas las bolsas de la clase tienen esto:
card-same-water = { $amount } de agua a { $degrees }
card-same-bag = una bolsa: { $bag }
card-own-bags = Escriban qué va en cada bolsa.
card-own-steps = Escriban cómo las van a hacer. Un paso en cada línea.
card-bag = bolsa
card-with = { $amount } ({ $other })
card-none = –
card-guess = Escriban su predicción en la hoja de datos.
card-every = Lean cada bolsa cada { $minutes } minutos, { $count } veces.
card-read = Lean cada bolsa a los { $minutes } minutos.
card-missed = ¿Faltó una? Déjenla vacía.
card-wash = Lávense las manos con jabón.

# Lo que puede hacer daño, en palabras de niño. El código es el del aviso del que viene.
care = Tengan cuidado
care-s02 = Las gotas de enzima pican. Limpien cada derrame con un trapo mojado.
care-s03 = El agua muy caliente quema. Solo la sirve su maestra o maestro.
care-s04 = No metan las manos en la bandeja tibia.
care-s07 = La bolsa { $bag } puede reventar. Ábranla sobre la tina { $minute } minutos después de su lectura cero.
care-s08 = Dejen un poco abierta la bolsa que se guarda.
care-s09 = Nada de esto va a la boca.
care-s10 = La comida de aquí puede tener { $allergens }. ¿Les hace daño? Avisen. Toda la clase la cambia.
care-s13 = Tapen cortadas. No se toquen la cara.
care-s16 = Nadie sopla en el medidor. Saquen el gas de la bolsa.
care-s18 = ¿Vidrio roto? No lo toquen. Avisen a su maestra o maestro.
care-s19 = Sequen en seguida el piso.
care-s23 = ¿Los guantes les dan picazón? Quítenlos y avisen a su maestra o maestro.
care-s25 = ¿Huele muy mal? Avisen y salgan.
care-s26 = Tengan las bolsas lejos de la cara.
care-s27 = ¿La levadura les hace daño? Avisen a su maestra o maestro antes de empezar.
care-s29 = No echen chorros con la jeringa.
care-s30 = El puré caliente se pega y quema. Solo lo cocina su maestra o maestro.
care-s31 = Ninguna bolsa va a casa.
care-s32 = No huelan el gas.
allergen-milk = leche
allergen-egg = huevo
allergen-fish = pescado
allergen-shellfish = mariscos
allergen-tree-nuts = nueces
allergen-peanut = cacahuate
allergen-wheat = trigo
allergen-soy = soya
allergen-sesame = ajonjolí

# Medidas de la cocina, como las escribe un plan.
unit-tsp = cdta.
unit-tbsp = cda.
unit-cup = taza
unit-cups = tazas
unit-drop = gota
unit-drops = gotas
unit-tablet = pastilla
unit-tablets = pastillas
unit-packet = sobre
unit-packets = sobres
unit-piece = pieza
unit-pieces = piezas

# La hoja de datos.
data-name = Hoja de datos
data-zero-at = cero a las
data-zero = cero
data-how = Anoten cada altura en mm enteros.
data-late = ¿El cero fue tarde? Tachen su hora y pongan la hora real.
data-curve = Marquen cada altura con un punto. Unan los puntos de cada bolsa.

# La hoja para planear, junto a las palabras de su página.
planning-name = Hoja para planear

# La hoja de la pared.
tally-name = Hoja de la clase
tally-kind = tipo de bolsa
tally-rise = cuánto subió cada tarjeta
tally-how = Tomen la última altura. Réstenle la altura cero. Escríbanlo en la casilla de su bolsa.
tally-dot = Luego marquen un punto sobre la línea.

# Papel cuadriculado.
graph-name = Papel cuadriculado
graph-group = Grupo
graph-period = Período
graph-shows = Qué muestra
graph-marks = ¿Qué hay en cada bolsa?

# La regla de papel.
gauge-name = Regla de papel
gauge-cut = Corten por la línea gruesa. Es la mesa.
gauge-fold = Doblen cada tira por la línea cortada, como un libro.
gauge-stand = Párenla junto a la tarjeta. La línea gruesa va abajo.
gauge-read = Lean donde la orilla de abajo de la tarjeta toca la tira.
gauge-check = Antes pongan una regla en las dos líneas. Cada una mide 100 mm. ¿Una no? Impriman otra vez al 100 %.
# Las diapositivas de la plática después del día.
slides-period = Clase { $period }
slides-dots = Subida en el minuto
slides-dots-after = , mm. Cada marca es una bolsa.
slides-curves = Cada línea delgada es una bolsa. La gruesa es el promedio. La sombra dice qué tan lejos quedan las bolsas.
slides-talk = Platiquen
slides-nothing = Todavía no hay lecturas.
slides-prompt-see = ¿Qué ven primero? Digan solo lo que muestran los puntos.
slides-prompt-spread = ¿Qué tan lejos están las bolsas de un tipo? ¿Y los tipos entre sí?
slides-prompt-aside = Una bolsa se apartó. ¿Qué regla lo dice? ¿Es justo?
slides-prompt-control = ¿Qué nos dice la bolsa sin alimento?
slides-prompt-claim = ¿Qué podemos afirmar? ¿Qué números lo apoyan?
slides-prompt-next = ¿Qué cosa cambiarían ahora? ¿Qué queda igual?

# La hoja para las familias y la dirección.
summary-name = Lo que descubrieron nuestras clases
summary-did = Qué hicimos
summary-found = Qué hallamos
summary-know = Qué tan seguros estamos
summary-safe = Nuestras reglas de seguridad
summary-learned = Para qué sirve
summary-home = Pregunten en casa
summary-did-says = Nuestro plan fue de { $bags } bolsas pequeñas de levadura, agua tibia y alimento, hechas en { $periods }. { $read } La levadura hace gas con el alimento. El gas sube una tarjeta sobre la bolsa. Los estudiantes leyeron su altura con una regla y dibujaron lo que vieron.
summary-periods-one = una clase
summary-periods = { $count } clases
summary-read-none = Todavía no se leyó ninguna bolsa.
summary-read-all = Se leyeron todas.
summary-read-some = Tenemos la altura de { $count } de ellas.
summary-clear = Claro
summary-leaning = Parece
summary-open = Por saber
summary-more = { $treatment }: la tarjeta subió { $mm } mm más que con { $reference }.
summary-less = { $treatment }: la tarjeta subió { $mm } mm menos que con { $reference }.
summary-rest = De otros { $count } pares todavía no sabemos si son distintos. Con una regla no vemos menos de { $mm } mm.
summary-rest-one = De otro par todavía no sabemos si son distintos. Con una regla no vemos menos de { $mm } mm.
summary-rest-all = ¿Son distintas las bolsas? Todavía no lo sabemos. Con una regla no vemos menos de { $mm } mm.
summary-rest-none = Todavía no hay alturas que comparar.
summary-further = Y más
summary-further-says = Vimos más diferencias como estas: { $count }.
summary-no-food = una bolsa sin alimento
summary-picture = Subida en mm. Cada marca es una bolsa. La línea vertical es el promedio; la barra dice qué tan lejos quedan de él. Ninguna marca es una persona.
summary-know-says = Las bolsas hechas igual no suben igual. Por eso cada tipo se hizo más de una vez. Decimos que una diferencia es clara solo si es mayor que la del azar. Se probaron esta levadura, estos alimentos y este salón, no otros.
summary-safe-lead = Esto pide nuestro plan:
summary-safe-goggles = Lentes de seguridad puestos, manos lavadas y mesas limpias.
summary-safe-taste = Nadie prueba ni come nada, y nadie sopla en nada.
summary-safe-enzyme = Solo el maestro usa polvos. Los estudiantes reciben líquidos.
summary-safe-water = El agua está tibia, no caliente. El alimento que puede dañar a alguien se cambia para toda la clase.
summary-safe-poured = Todas las bolsas se abren y se vacían el mismo día. Ninguna va a casa.
summary-home-says = ¿Qué cambiaron y qué dejaron igual? ¿Qué bolsa les sorprendió? ¿Cómo sabrían más?

# Fechas como las escribe la gente
date-words = { $day } de { $month } de { $year }
date-span = { $first } a { $last }
month-1 = enero
month-2 = febrero
month-3 = marzo
month-4 = abril
month-5 = mayo
month-6 = junio
month-7 = julio
month-8 = agosto
month-9 = septiembre
month-10 = octubre
month-11 = noviembre
month-12 = diciembre

# Palabras que dibujan las gráficas
chart-minutes = min
chart-millimeters = mm
chart-last-reading = última lectura
chart-bell = timbre
chart-to = a
chart-mad = DMA
chart-same-as = igual que
chart-gap = diferencia
chart-mads = DMA
chart-nothing = sin lecturas
chart-kinds = tipos
