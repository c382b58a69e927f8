namespace MenuLab.Core.Drafts.Reading;

/// <summary>Units as bars write them, in English and the neighbours' languages. Common usage, no source.</summary>
internal static class UnitWords
{
    public static readonly (Unit Unit, string Words)[] Rows =
    [
        (Unit.Millilitre, "ml, mls, millilitre, millilitres, milliliter, milliliters, mil, mils, cc, mililitro, mililitros, millilitro, millilitri, mililitre"),
        (Unit.Centilitre, "cl, cls, centilitre, centilitres, centiliter, centiliters, centilitro, centilitros, centilitri"),
        (Unit.Litre, "l, lt, ltr, ltrs, litre, litres, liter, liters, litro, litros, litri, litr"),
        (Unit.FluidOunce, "oz, ozs, ounce, ounces, fl oz, floz, fluid ounce, fluid ounces, fl ounce, fl ounces, onces, onza, onzas, oncia, once liquide, unze, unzen"),
        (Unit.WeightOunce, "oz wt, oz weight, wt oz, oz by weight, ounce by weight, ounces by weight, ounce weight, ounces weight, weight oz, oz av"),
        (Unit.Teaspoon, "t, tsp, tsps, tspn, teaspoon, teaspoons, tea spoon, tea spoons, tl, teeloffel, teelöffel, c a c, c à c, cac, cuillère à café, cuillères à café, cuillere a the, "
            + "cdta, cdtas, cdita, cditas, cucharadita, cucharaditas, cucchiaino, cucchiaini, colher de chá, colheres de chá, theelepel, theelepels, tsk, teske, teskeer, łyżeczka, łyżeczki, łyżeczkę"),
        (Unit.Tablespoon, "tbsp, tbsps, tbs, tbl, tablespoon, tablespoons, table spoon, table spoons, el, esslöffel, essloeffel, c a s, c à s, cas, cuillère à soupe, cuillères à soupe, "
            + "cda, cdas, cucharada, cucharadas, cucchiaio, cucchiai, colher de sopa, colheres de sopa, eetlepel, eetlepels, spsk, spiseske, spiseskeer, msk, łyżka, łyżki, łyżkę"),
        (Unit.BarSpoon, "barspoon, barspoons, bar spoon, bar spoons, bsp, bsps, bspn, bs, bar sp, bl, barlöffel, barloeffel, cuillère de bar, cuillères de bar, cuchara de bar, "
            + "cucharada de bar, cucharadita de bar, cucchiaio da bar, bar lepel, barlepel, barske, colher de bar, łyżka barmańska"),
        (Unit.Dash, "dash, dashes, dsh, dshs, ds, d, spritzer, spritzern, trait, traits, golpe, golpes, chorrito, chorritos, goccia di bitter, lampo, scheutje, scheutjes, stænk"),
        (Unit.Drop, "drop, drops, dr, drp, drps, tropfen, goutte, gouttes, gota, gotas, goccia, gocce, druppel, druppels, dråbe, dråber, kropla, krople, kropli"),
        (Unit.Mist, "mist, mists, spray, sprays, spritz of, spritzes, atomiser, atomizer, sprühstoß, sprühstösse, pulvérisation, pulvérisations, spruzzo, spruzzi"),
        (Unit.Cup, "cup, cups, tasse, tassen, tasses, taza, tazas, tazza, tazze, xícara, xícaras, chávena"),
        (Unit.Gram, "g, gr, gs, gm, gms, gram, grams, gramme, grammes, gramm, gramo, gramos, grammo, grammi, grama, gramas"),
        (Unit.Kilogram, "kg, kgs, kilo, kilos, kilogram, kilograms, kilogramme, kilogrammes, kilogramm, kilogramo, kilogramos, chilo, chili, chilogrammo, quilo, quilos"),
        (Unit.Pound, "lb, lbs, pound, pounds, #, libra, libras, libbra, libbre, livre"),
        (Unit.Part, "part, parts, pt, pts, teil, teile, teilen, parte, partes, parti, deel, delen, dele, część, części"),
        (Unit.Piece, "ea, each, pc, pcs, piece, pieces, stk, stück, pièce, pièces, pieza, piezas, pezzo, pezzi, unidad, unidades, unidade, stuk, stuks, szt, "
            + "stalk, stalks, stick, sticks, pod, pods, stange, stangen"),
        (Unit.Leaf, "leaf, leaves, lvs, lf, blatt, blätter, blättern, feuille, feuilles, hoja, hojas, foglia, foglie, folha, folhas, blad, blaadje, blaadjes, blade, listek, listki, listków"),
        (Unit.Sprig, "sprig, sprigs, spr, spg, zweig, zweige, zweigen, brin, brins, branche, branches, ramita, ramitas, rametto, rametti, raminho, raminhos, takje, takjes, kvist, kviste, gałązka, gałązki"),
        (Unit.Slice, "slice, slices, wheel, wheels, coin, coins, ribbon, ribbons, scheibe, scheiben, tranche, tranches, rondelle, rondelles, rodaja, rodajas, fetta, fette, fettina, fettine, "
            + "rodela, rodelas, fatia, fatias, plakje, plakjes, schijf, schijfje, skive, skiver, plasterek, plasterki, plaster, plastry"),
        (Unit.Wedge, "wedge, wedges, wdg, spalte, spalten, quartier, quartiers, gajo, gajos, spicchio, spicchi, gomo, gomos, partje, partjes, båd, både, ćwiartka, ćwiartki"),
        (Unit.Peel, "peel, peels, twist, twists, tw, zest, zests, zeste, zestes, zesten, schale, piel, pieles, cáscara, scorza, scorze, casca, cascas, schil, skal, skórka"),
        (Unit.Pinch, "pinch, pinches, prise, prisen, pincée, pincées, pizca, pizcas, pellizco, pizzico, pizzichi, presa, pitada, pitadas, snufje, snuf, mespunt, knivspids, nip, szczypta, szczyptę, szczypty"),
        (Unit.Cube, "cube, cubes, würfel, cubo, cubos, cubetto, cubetti, terrón, terrones, zolletta, zollette, torrão, torrões, klontje, klontjes, kostka, kostki"),
        (Unit.Splash, "splash, splashes, spl, schuss, schuß, chorro, chorros, spruzzata, schizzo, scheut, sjat"),
    ];

    /// <summary>Endings of German compounds that carry a unit: "Zitronenscheibe".</summary>
    public static readonly (string Ending, Unit Unit)[] Compounds =
    [
        ("scheibe", Unit.Slice), ("scheiben", Unit.Slice), ("zeste", Unit.Peel), ("zesten", Unit.Peel), ("schale", Unit.Peel), ("zweig", Unit.Sprig),
        ("zweige", Unit.Sprig), ("blatt", Unit.Leaf), ("blatter", Unit.Leaf), ("blaetter", Unit.Leaf), ("wurfel", Unit.Cube), ("stange", Unit.Piece),
    ];

    /// <summary>A volume that a measure of the house holds, mL; NaN for what is no volume.</summary>
    public static double Millilitres(Unit unit, House.MeasuresSet measures) => unit switch
    {
        Unit.Millilitre => 1,
        Unit.Centilitre => 10,
        Unit.Litre => 1000,
        Unit.FluidOunce => measures.FluidOunce,
        Unit.Teaspoon => measures.Teaspoon,
        Unit.Tablespoon => measures.Tablespoon,
        Unit.BarSpoon => measures.BarSpoon,
        Unit.Dash => measures.Dash,
        Unit.Drop => measures.Drop,
        Unit.Mist => measures.Mist,
        Unit.Cup => measures.Cup,
        Unit.Splash => measures.Splash,
        Unit.Float => measures.Float,
        _ => double.NaN,
    };

    /// <summary>Grams of a unit of mass, else NaN.</summary>
    public static double Grams(Unit unit, House.MeasuresSet measures) => unit switch
    {
        Unit.Gram => 1,
        Unit.Kilogram => 1000,
        Unit.WeightOunce => measures.WeightOunceGrams,
        // Sixteen avoirdupois ounces, exactly.
        Unit.Pound => 16 * measures.WeightOunceGrams,
        _ => double.NaN,
    };

    /// <summary>A count of pieces whose mass the ingredient tells.</summary>
    public static bool IsCount(Unit unit) => unit is Unit.Piece or Unit.Leaf or Unit.Sprig or Unit.Slice or Unit.Wedge or Unit.Peel or Unit.Cube;
}
