namespace MenuLab.Core.Drafts.Reading;

/// <summary>
/// The bar's small words: places, joins, treatments, temperatures, yields and what says nothing; with units and build
/// words one table of phrases. Common usage, no source.
/// </summary>
internal static class BarWords
{
    private static readonly (Sense Sense, string Words)[] Rows =
    [
        (Sense.Garnish, "garnish, garnishes, garnished, garnish with, garnished with, garn, gar, gnsh, grn, deco, decorate, decorate with, garnitur, garnieren, garniert, garniture, garnir, décor, guarnición, guarnicion, adornar, "
            + "decorar, decoración, guarnizione, guarnire, per guarnire, guarnição, decoração, garnering, garneren, pynt, pyntes, dekoracja, grated on top, grated over, grated over the top, freshly grated on top, shaved on top, to garnish, for garnish"),
        (Sense.Rim, "rim, rimmed, rimmed with, rim the glass, rim the glass with, rim with, half rim, full rim, rand, zuckerrand, crusta, givrage, givrer, bord, orilla, escarchar, escarchado, borde, crosta, bordo, borda, rand van"),
        (Sense.OnTheRim, "on the rim, on rim, am rand, sur le bord, en el borde, sul bordo"),
        (Sense.Rinse, "rinse, rinsed, rinse glass, rinse the glass, rinse with, rinse glass with, rinse the glass with, rinsed with, ausspülen, spülen, ausschwenken, rincer, enjuagar, sciacquare, enxaguar, wash the glass with"),
        (Sense.Beside, "on the side, on side, beside, on the back, as a back, served beside, served on the side, daneben, dazu, à part, à côté, aparte, al lado, a parte, a lato, ao lado, ernaast"),
        (Sense.Top, "top, tops, topped, top up, top off, top with, topped with, topped up with, topped off with, top up with, topped up, top it with, top w, charge with, fill with, fill up with, lengthen with, auffüllen, auffüllen mit, auffuellen mit, aufgießen mit, "
            + "aufgefüllt mit, toppen, toppen mit, compléter, compléter de, compléter d, compléter avec, allonger, allonger de, allonger d, completar, completar con, rellenar con, rematar con, colmare, a colmare, colmare con, completar com, aftoppen, aanvullen met, fyld op med, uzupełnić"),
        (Sense.OnTop, "on top, over the top, over top, across the top, oben drauf, obenauf, au dessus, encima, por encima, sopra, in superficie, por cima"),
        (Sense.Float, "float, floats, floated, floating, floaten, flotar, flotante, flottant"),
        (Sense.InTheGlass, "in the glass, in glass, into the glass, im glas, dans le verre, en el vaso, no copo, in het glas"),
        (Sense.Over, "over, on, onto, auf, sur, sobre, su, over a, on a, on the"),
        (Sense.With, "with, w, w/, mit, avec, con, com, met, med, z"),
        (Sense.And, "and, n, und, et, y, e, en, og"),
        (Sense.Or, "or, oder, ou, o, of een, eller, lub, either"),
        (Sense.Seconds, "s, sec, secs, second, seconds, sek, sekunde, sekunden, seconde, secondes, segundo, segundos, secondo, secondi, seconden, sekunder, sekund, \""),
        (Sense.Minutes, "min, mins, minute, minutes, minuten, minuto, minutos, minuti, minuut, minutter, hour, hours, hr, hrs, h, stunde, stunden, heure, heures, day, days, tage, jours"),
        (Sense.Times, "times, revolutions, turns, mal, fois, veces, volte, vezes, keer"),
        (Sense.Celsius, "°c, °, c, celsius, degree, degrees, degrees c, degrees celsius, ° c, deg, deg c, grad, degrés, grados, gradi, graus, graden"),
        (Sense.Fahrenheit, "f, ° f, fahrenheit, degrees f, degrees fahrenheit, deg f"),
        (Sense.Scant, "scant, short, skinny, shy, light, knapp, knappe, scarso, bare"),
        (Sense.Fat, "fat, heavy pour, generous, heaped, heaping, big, reichlich, gehäufter, bon, bonne, generoso, abbondante"),
        (Sense.About, "about, approx, approximately, around, roughly, ca, circa, etwa, environ, env, aprox, unos, unas, ongeveer, cirka, około, ~"),
        (Sense.EqualParts, "equal parts, equal part, even parts, gleiche teile, zu gleichen teilen, parts égales, à parts égales, partes iguales, a partes iguales, parti uguali, in parti uguali, partes iguais, gelijke delen"),
        (Sense.Total, "total, in total, totals, all in, altogether, insgesamt, gesamt, au total, en total, totale, in totale, no total, totaal"),
        (Sense.Makes, "makes, make, yield, yields, yielding, serves, serving, batch, batch of, enough for, for, recipe for, good for, ergibt, reicht für, für, pour, donne, pour faire, para, rinde, resa, per, rende, porções, rendimento, voor, goed voor, giver, til"),
        (Sense.Drinks, "drinks, drink, serves, servings, serving, serve, portion, portions, portionen, cocktails, cocktail, glasses, people, guests, covers, gäste, personen, gläser, verres, verre, personnes, bebidas, copas, tragos, personas, persone, porzioni, bicchieri, "
            + "doses, pessoas, glazen, glas, drankjes, porties, portioner, drinki, drinków"),
        (Sense.Step, "simmer, boil, cook, cool, chill, rest, infuse, infusing, steep, macerate, dissolve, whisk, bring to the boil, reduce, press, bottle, age, pour, serve, add, then, combine, mix, mix all, all in, everything, muddle lightly, express, discard, peel the, straw, straws, napkin, pick, skewer, "
            + "kochen, ziehen lassen, servieren, gießen, servir, verser, cuire, infuser, hervir, servire, versare, bollire, ferver, schenken, koken, hælde"),
        (Sense.Told, "not, don t, do not, never, was, were, last week, yesterday, instead, used to, nicht, pas, jamais, nunca, mai"),
        (Sense.Vague, "handful, handfuls, bunch, bunches, knob, glug, glugs, finger, fingers, thimble, thimbles, bottle of, bottles of, bottle, bottles, can of, can, cans, shot, shots, shot of, jigger, jiggers, pony, measure, measures, "
            + "glass of, glasses of, jug of, scoop, scoops, squeeze of, squeeze, pint, pints, quart, quarts, qt, qts, gallon, gallons, gal, c, grind, grinds, crack, cracks, capful, capfuls, poignée, bouquet, handvoll, bund, flasche, bouteille, puñado, manojo, manciata, mazzetto, punhado, maço, handjevol, bosje, flaska, flaske"),
        (Sense.ToTaste, "to taste, as needed, as required, q s, qs, some, nach geschmack, nach belieben, selon goût, al gusto, a gusto, q b, a gosto, naar smaak"),
        (Sense.JuiceOf, "juice of, the juice of, juice from, saft, saft von, der saft von, jus d, jus de, le jus d, le jus de, zumo de, jugo de, succo di, suco de, sumo de, sap van, saft af, sok z"),
        (Sense.Count, "x"),
        (Sense.Label, "method, technique, build method, ice type, glassware, glass, glas, straining, ingredients, ingredient, spec, specs, recipe, zubereitung, zutaten, methode, méthode, ingrédients, verre, préparation, ingredientes, método, preparación, vaso de, "
            + "ingredienti, metodo, preparazione, bicchiere, bereiding, shake time, served, serve in, served in, service"),
        (Sense.Filler, "of, the, a, an, de, d, du, des, la, le, les, l, el, los, las, del, di, da, do, dos, das, il, lo, gli, i, del, della, dell, der, die, das, den, dem, ein, eine, einen, einer, eines, un, une, una, uno, um, uma, een, het, vom, von, "
            + "hard, to, into, in, to the, im, ins, dans, en, nel, al, till, for a, well, gently, good, nice, of the, to the brim, to brim, full of, the rest, add, plus, also, briefly, quickly, down, kurz, kräftig, fort, bien, bene, and then, then, "
            + "lots of, plenty of, a little, little, little bit of, a bit of, at, from, per, each of, over ice in"),
    ];

    /// <summary>Words for what was done to an ingredient. The first of each row is kept.</summary>
    private static readonly string[] Treatments =
    [
        "fresh, freshly, frisch, frische, frischer, frisches, frais, fraîche, fraîches, fresco, fresca, frescos, freshly squeezed, fresh squeezed, fresh pressed, verse, frisk, świeży",
        "squeezed, juiced, gepresst, pressé, exprimido, spremuto, espremido",
        "pressed, cold pressed",
        "house, house made, housemade, homemade, home made, our, hausgemacht, maison, casero, della casa, da casa",
        "muddled, muddle, mddl, lightly muddled, gently muddled, zerstoßen, gestampft, pilé, pilés, pilées, macerado, machacado, pestato, pestati, macerados, geplet",
        "toasted, geröstet, torréfié, tostado, tostato",
        "roasted, grilled, charred, smoked over",
        "grated, freshly grated, microplaned, gerieben, râpé, râpée, rallado, grattugiato, ralado, geraspt",
        "chopped, diced, sliced, cut in wedges, cut into wedges, cut up, cut in cubes, cut in half, halved, quartered, peeled, pitted, torn, bruised, slapped, spanked, cracked open, crushed lightly, smashed, gehackt, geschält, haché, picado fino, tritato",
        "fine strained juice, filtered, clarified, milk washed, centrifuged",
        "flamed, expressed, expressed over the top, express over the top, flambé",
        "aerated, whipped, lightly whipped, foamed, frothed, steamed milk style",
        "heaped spoon, level, packed",
        "organic, bio, cloudy, thick, thin, ripe, tart, whole, entier, entière, entero, ganze, ganzer",
        "infused warm, infused cold",
    ];

    private static readonly (double Celsius, string Words)[] Starts =
    [
        (-18, "frozen, from the freezer, freezer cold, freezer, ex freezer, tiefgekühlt, gefroren, aus dem gefrierfach, congelé, du congélateur, congelado, del congelador, congelato, dal freezer, bevroren, uit de vriezer"),
        (4, "from the fridge, fridge cold, fridge, chilled, cold, ice cold, well chilled, pre chilled, prechilled, gekühlt, kalt, kalte, kalter, eiskalt, aus dem kühlschrank, froid, froide, bien frais, bien froid, frío, fría, bien frío, fredo, freddo, fredda, gelado, koud, gekoeld, kold"),
        (22, "room temp, room temperature, at room temp, at room temperature, from the shelf, ambient, zimmerwarm, raumtemperatur, à température ambiante, temperatura ambiente, a temperatura ambiente"),
        (45, "warm, warmed, lukewarm, lauwarm, tiède, tibio, tiepido, morno"),
        (80, "hot, very hot, piping hot, heiß, heißer, heiße, heißes, chaud, chaude, caliente, caldo, calda, quente, heet, varm, gorący"),
        (97, "boiling, just boiled, boiling hot, off the boil, kochend, bouillant, hirviendo, bollente, fervente"),
    ];

    /// <summary>Shortened words of names, spelled out where the short form is no name of the pantry.</summary>
    public static readonly Dictionary<string, string> Spelled = Table(
        "j jce jc jus:juice, syr sirup syrp srp:syrup, org orng ornge:orange, wht wh:white, blk:black, grn:green, verm vmth:vermouth, ext extr:extract, van vnl:vanilla, mpl:maple, "
        + "pom:pomegranate, pine:pineapple, rasp:raspberry, strawb:strawberry, choc:chocolate, wtr:water, vin vngr:vinegar, lem lmn:lemon, lim:lime, gf gfruit:grapefruit, hny:honey, "
        + "agv:agave, cuke:cucumber, bttrs bitts:bitters, aro arom:aromatic, cran cranb:cranberry, app appl:apple, dem:demerara, gren:grenadine, swt:sweet, dr:dry, spk:sparkling");

    public static readonly PhraseTable<Meaning> Phrases = Build();

    /// <summary>Every word of the tables, for typing errors.</summary>
    public static readonly Spelling Words = SpellingOf();

    private static PhraseTable<Meaning> Build()
    {
        var table = new PhraseTable<Meaning>();
        foreach (var (phrase, meaning) in All())
        {
            table.Add(phrase, meaning);
        }
        return table;
    }

    private static Spelling SpellingOf()
    {
        var words = new Spelling();
        foreach (var (phrase, meaning) in All())
        {
            // Long enough to be slipped over, and of those senses that a slip may reach without changing what is poured.
            if (meaning.Sense is Sense.Unit or Sense.Method or Sense.Ice or Sense.Glass or Sense.Strain or Sense.Garnish)
            {
                foreach (var word in Tokenizer.Words(phrase).Where(w => w.Length >= 4))
                {
                    words.Add(word);
                }
            }
        }
        words.Seal();
        return words;
    }

    private static IEnumerable<(string Phrase, Meaning Meaning)> All()
    {
        foreach (var (unit, words) in UnitWords.Rows)
        {
            foreach (var phrase in Split(words))
            {
                yield return (phrase, new Meaning(Sense.Unit, Unit: unit));
            }
        }
        foreach (var (sense, key, words) in BuildWords.Rows)
        {
            foreach (var phrase in Split(words))
            {
                yield return (phrase, new Meaning(sense, key));
            }
        }
        foreach (var (sense, words) in Rows)
        {
            foreach (var phrase in Split(words))
            {
                yield return (phrase, new Meaning(sense, phrase));
            }
        }
        foreach (var row in Treatments)
        {
            var phrases = Split(row).ToArray();
            foreach (var phrase in phrases)
            {
                yield return (phrase, new Meaning(Sense.Treatment, phrase));
            }
        }
        foreach (var (celsius, words) in Starts)
        {
            foreach (var phrase in Split(words))
            {
                yield return (phrase, new Meaning(Sense.Start, phrase, Figure: celsius));
            }
        }
    }

    private static string[] Split(string words) => words.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    private static Dictionary<string, string> Table(string rows) =>
        Split(rows).Select(row => row.Split(':')).SelectMany(row => row[0].Split(' ').Select(word => (word, row[1])))
            .ToDictionary(pair => pair.word, pair => pair.Item2, StringComparer.Ordinal);
}
