namespace MenuLab.Core.Drafts.Reading;

/// <summary>
/// Words for methods, ices, glasses and strains, in English and the neighbours' languages, with the keys of seed-data.
/// A catalogue adds the names of its own entries. Common usage, no source.
/// </summary>
internal static class BuildWords
{
    public static readonly (Sense Sense, string Key, string Words)[] Rows =
    [
        (Sense.Method, "shaken", "shake, shaken, shakes, shaking, shk, sh, shake hard, hard shake, hard shaken, shaken hard, shake long, wet shake, wet shaken, shake and strain cold, schütteln, geschüttelt, schuetteln, "
            + "shaken mit eis, au shaker, shaker, shakez, secouer, frapper, agitar, agitado, batir, shakerare, shakerato, shakera, nello shaker, en coctelera, schudden, shakear, bater, agite, ryst, rystes, wstrząsnąć, shakerować"),
        (Sense.Method, "whip_shaken", "whip shake, whip shaken, whipshake, short shake, whip"),
        (Sense.Method, "dry_shaken", "dry shake, dry shaken, dryshake, trocken schütteln, shaker à sec, agitar en seco, shakerare a secco, dry shake first"),
        (Sense.Method, "reverse_dry_shaken", "reverse dry shake, reverse dry shaken, then dry shake, rev dry shake"),
        (Sense.Method, "stirred", "stir, stirred, stirs, stirring, st, rühren, gerührt, ruehren, verrühren, remuer, mélanger, à la cuillère, remover, revolver, mescolare, mescolato, mexer, roeren, geroerd, rør, røres, mieszać, zamieszać"),
        (Sense.Method, "thrown", "throw, thrown, throwing, werfen, geworfen, escanciar, lanciare"),
        (Sense.Method, "rolled", "roll, rolled, rolling, rollen, gerollt, rodar, rullare"),
        (Sense.Method, "swizzled", "swizzle, swizzled, swizzling, swz, quirlen, gequirlt"),
        (Sense.Method, "built", "build, built, bld, build in glass, build in the glass, built in glass, bauen, gebaut, im glas bauen, direct au verre, directement dans le verre, construire, directo, construir, nel bicchiere, opbouwen, montar"),
        (Sense.Method, "crushed", "build on crushed, built on crushed, build over crushed, built over crushed"),
        (Sense.Method, "blended", "blend, blended, blending, mixen, gemixt, mixer, au mixeur, licuar, licuado, frullare, frullato, blenden, no liquidificador"),
        (Sense.Method, "flash_blended", "flash blend, flash blended, flash blending, drink mixer, spindle mix, spindle mixed, spindle"),
        (Sense.Method, "hot", "heat, heated, steam, steamed, serve hot, served hot, erhitzen, chauffer, calentar, scaldare"),
        (Sense.Method, "straight", "pour straight, straight, straight pour, neat, straight from the bottle, serve straight, from the bottle"),
        (Sense.Method, "charged", "charge, charged, carbonate, carbonated cold, force carbonate"),

        // Plain "ice" is whatever the method takes.
        (Sense.Ice, "", "ice, fresh ice, eis, eise, glace, hielo, ghiaccio, gelo, ijs, lód, lodem"),
        (Sense.Ice, "cubes", "cubes, cube, ice cubes, ice cube, cubed ice, fresh cubes, eiswürfel, eiswürfeln, glaçons, glaçon, hielos, cubitos, cubitos de hielo, "
            + "cubetti di ghiaccio, cubos de gelo, ijsblokjes, isterninger, kostki lodu"),
        (Sense.Ice, "wet_cubes", "wet ice, wet cubes, well ice, bar ice"),
        (Sense.Ice, "crushed", "crushed, crushed ice, crush, crushed eis, gestoßenes eis, glace pilée, hielo picado, hielo frappé, hielo triturado, ghiaccio tritato, gelo picado, gelo moído, crushed ijs, gemalen ijs, knust is, kruszony lód"),
        (Sense.Ice, "pebble", "pebble, pebble ice, pebbles, nugget ice, nugget, pellet ice, little pebble"),
        (Sense.Ice, "block", "block, block ice, big cube, big rock, big ice, large cube, large rock, large ice, clear block, clear cube, ice block, one big rock, one big cube, one large cube, one big, large format, "
            + "großer würfel, grosser eiswürfel, gros glaçon, hielo grande, cubo grande, cubo grande di ghiaccio, spear"),

        (Sense.Glass, "coupe", "coupe, coupes, cpe, cp, coup glass, coupe glass, coupette, coupé, copa coupe, coppa, coppetta, une coupe, taça coupe, cocktailschale"),
        (Sense.Glass, "small_coupe", "small coupe, little coupe, sm coupe, kleine coupe, petite coupe, coupe pequeña, coppetta piccola"),
        (Sense.Glass, "small_stem", "small stem, small stemmed glass, stemmed glass"),
        (Sense.Glass, "rocks", "rocks, rocks glass, rx, rx glass, rox, rox glass, single rocks, old fashioned glass, short glass, vaso corto, vaso bajo, bicchiere basso, verre bas, kurzes glas, copo baixo"),
        (Sense.Glass, "double_rocks", "double rocks, double rocks glass, dbl rocks, double rox, drox, d rocks, double old fashioned glass, dof"),
        (Sense.Glass, "tumbler", "tumbler, tumblers, becher, gobelet, vaso"),
        (Sense.Glass, "highball", "highball, highballs, highball glass, hb, hiball, hiball glass, verre highball, verre à highball, vaso highball, bicchiere highball, copo highball"),
        (Sense.Glass, "long_glass", "long glass, tall glass, longdrinkglas, langes glas, hohes glas, verre long, grand verre, vaso alto, vaso largo, bicchiere alto, copo alto, longdrink, longdrinkglass"),
        (Sense.Glass, "sling_glass", "sling glass, sling"),
        (Sense.Glass, "curved_glass", "curved glass, curved tall glass"),
        (Sense.Glass, "flute", "flute, flutes, flute glass, flöte, sektglas, flûte, copa flauta, flauta"),
        (Sense.Glass, "wine_glass", "wine glass, wineglass, wine glasses, weinglas, verre à vin, copa de vino, calice, calice da vino, bicchiere da vino, taça de vinho, wijnglas, vinglas, kieliszek do wina"),
        (Sense.Glass, "goblet", "goblet, goblets, balloon, balloon glass, copa de balón, copa balón, copa, ballon"),
        (Sense.Glass, "mug", "mug, mugs, henkelbecher, taza alta, boccale, caneca, mok, krus, kubek"),
        (Sense.Glass, "heatproof_glass", "heatproof glass, heat proof glass, hot glass, toddy glass, hitzefestes glas, teeglas, verre à anse, handled glass"),
        (Sense.Glass, "metal_cup", "metal cup, copper cup, tin cup, steel cup, copper mug, metal mug, silver cup, metallbecher"),
        (Sense.Glass, "punch_cup", "punch cup, punch cups, punch glass, bowlenglas"),
        (Sense.Glass, "shot_glass", "shot glass, shotglass, shot glasses, schnapsglas, verre à shot, vaso de chupito, chupito, bicchierino"),
        (Sense.Glass, "beer_glass", "beer glass, bierglas, verre à bière, vaso de cerveza"),
        (Sense.Glass, "teacup", "teacup, tea cup, teetasse, tasse à thé"),

        (Sense.Strain, "fine_strained", "fine strain, fine strained, finestrain, fine strn, f s, f/s, fs, double strain, double strained, dbl strain, doublestrain, ds strain, d/s, doppelt abseihen, doppelt abgeseiht, fein abseihen, "
            + "double filtration, filtrer deux fois, passer deux fois, doble colado, doble colar, colar fino, colado fino, doppio filtraggio, filtrare due volte, filtro doppio, dubbel zeven, dupla coagem, coar duas vezes"),
        (Sense.Strain, "strained", "strain, strained, strains, strn, single strain, single strained, abseihen, abgeseiht, seihen, filtrer, filtrez, colar, colado, filtrare, filtra, coar, zeven, gezeefd, sies, odcedzić, przecedzić"),
        (Sense.Strain, "open_pour", "open pour, open poured, dump, dumped, dirty dump, dirty pour, pour everything, pour all, pour it all, pour with the ice, mit eis umgießen, verser tout, volcar"),
        (Sense.Strain, "unstrained", "unstrained, do not strain, no strain, don t strain"),

        (Sense.Up, "none", "up, served up, serve up, straight up, no rocks"),
        (Sense.Up, "cubes", "on the rocks, over the rocks"),
        (Sense.NoIce, "label", "none, keines, aucune, ninguno, nessuno"),
        (Sense.NoIce, "", "no ice, without ice, ohne eis, sans glace, sans glaçons, sans glaçon, sin hielo, senza ghiaccio, sem gelo, zonder ijs, uden is, bez lodu"),
    ];
}
