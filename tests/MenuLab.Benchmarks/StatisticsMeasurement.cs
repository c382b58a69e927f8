using System.Diagnostics;
using MenuLab.Core.House;
using MenuLab.Core.Statistics;
using MenuLab.Core.Tastings;

namespace MenuLab.Benchmarks;

/// <summary>
/// Everything that is worked out when a tasting of 12 tasters, 6 samples and 10 questions is closed: plan and codes, each question by scores and by ranks with all
/// pairs and letters, four "just right" questions with resampled limits, ten ticked words with their map, serving order, pairs, the ideal amount, the
/// panel itself. Synthetic answers from a fixed seed.
/// </summary>
internal static class StatisticsMeasurement
{
    private const int Tasters = 12;
    private const int Samples = 6;
    private const int Questions = 10;
    private const int JustRightQuestions = 4;
    private const int Words = 10;
    private const int Times = 21;

    public static int Run()
    {
        var times = new double[Times];
        var sink = 0.0;
        var busy = TimeSpan.Zero;
        for (var time = -3; time < Times; time++)
        {
            busy = time == 0 ? Environment.CpuUsage.TotalTime : busy;
            var start = Stopwatch.GetTimestamp();
            sink += Everything();
            if (time >= 0)
            {
                times[time] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
            }
        }
        // Time on the processor, which neighbours on a busy machine do not lengthen.
        var perTime = (Environment.CpuUsage.TotalTime - busy).TotalMilliseconds / Times;
        Array.Sort(times);
        Console.WriteLine($"{Tasters} tasters, {Samples} samples, {Questions} questions; {Times} times; check sum {sink:E3}");
        Figure.Print("statistics_ms", times[Times / 2], "ms");
        Figure.Print("statistics_processor_ms", perTime, "ms");
        Figure.Print("statistics_fastest_ms", times[0], "ms");
        Figure.Print("statistics_slowest_ms", times[^1], "ms");
        return 0;
    }

    private static double Everything()
    {
        var draws = new SeededDraws(20261125);
        var plan = ServingPlan.Complete(Tasters, Samples, draws.Below);
        var sum = plan.Balance.Cost + SampleCodes.Draw(Tasters * Samples, [], [], draws.Below).Value.Count;

        for (var question = 0; question < Questions; question++)
        {
            var scores = Scores(draws);
            var found = ScoreComparison.Of(scores);
            sum += found.ByLuck ?? 0;
            sum += found.Letters?.Count ?? 0;
            sum += IntraclassCorrelation.Of(scores)?.Mean.Value.Value ?? 0;
            sum += Enumerable.Range(0, Samples).Sum(s => MeanInterval.Of([.. Enumerable.Range(0, Tasters).Select(t => scores[t, s])]).Mean);
            sum += ServingOrder.Of([.. plan.Orders.SelectMany((order, t) => order.Select((s, place) => new ServedScore(t, place, s, scores[t, s])))]).MeanSquare ?? 0;
            sum += ScoreComparison.OnPair(found, 0, 1, ["A", "B", "C", "D", "E", "F"], "liked", 0.75, Tasters, HouseFormat.Plain).Sentence.Length;
            for (var t = 0; t < Tasters; t++)
            {
                var own = Enumerable.Range(0, Samples).Select(s => scores[t, s]).ToArray();
                var rest = Enumerable.Range(0, Samples).Select(s => Enumerable.Range(0, Tasters).Where(other => other != t).Average(other => scores[other, s])).ToArray();
                sum += AnswersByLuck.Of([new TasterSession(own, rest, [], null, null)], draws).ByLuck ?? 0;
            }
        }

        for (var question = 0; question < JustRightQuestions; question++)
        {
            List<JustRightAnswer> answers = [.. Enumerable.Range(0, Tasters * Samples).Select(i => new JustRightAnswer(i % Tasters, 1 + draws.Below(5), 1 + draws.Below(9)))];
            sum += JustRight.Of(answers).Answers;
            sum += JustRight.DropByTasters(answers, tooMuch: true, draws)?.Low ?? 0;
            sum += JustRight.DropByTasters(answers, tooMuch: false, draws)?.Low ?? 0;
        }

        var mentions = new bool[Tasters, Samples, Words];
        var counts = new int[Samples, Words];
        for (var word = 0; word < Words; word++)
        {
            var ticks = new bool[Tasters, Samples];
            for (var t = 0; t < Tasters; t++)
            {
                for (var s = 0; s < Samples; s++)
                {
                    ticks[t, s] = mentions[t, s, word] = draws.Below(10) < 2 + (word + s) % 5;
                    counts[s, word] += ticks[t, s] ? 1 : 0;
                }
            }
            sum += Cochran.Of(ticks).ByLuck ?? 0;
        }
        var map = CorrespondenceMap.Of(counts);
        sum += CorrespondenceMap.Clouds(map, mentions, draws)[0]?.X ?? 0;

        List<PairChoice> choices = [];
        for (var t = 0; t < Tasters; t++)
        {
            for (var a = 0; a < Samples; a++)
            {
                for (var b = a + 1; b < Samples; b++)
                {
                    choices.Add(draws.Below(5) < 2 + (b - a) / 3 ? new PairChoice(t, a, b) : new PairChoice(t, b, a));
                }
            }
        }
        sum += BradleyTerry.Ranges(choices, Samples, draws, times: 300)![0].Low;

        List<LikedAmount> liked = [.. Enumerable.Range(0, Tasters * Samples).Select(i =>
            new LikedAmount(i % Tasters, 4 + 2 * (i / Tasters), 7 - Math.Pow(i / Tasters - 2.5, 2) / 3 + draws.Below(3)))];
        sum += IdealPoint.Of(liked).Optimum ?? 0;
        sum += IdealPointShrunk.Of(liked, ParabolaBelief.Sugar).Hill;
        sum += DiscriminationTest.Of(DiscriminationMethod.Tetrad, 7, Tasters).DPrime.Value;
        return sum;
    }

    private static double[,] Scores(SeededDraws draws)
    {
        var scores = new double[Tasters, Samples];
        for (var t = 0; t < Tasters; t++)
        {
            var level = draws.Below(3);
            for (var s = 0; s < Samples; s++)
            {
                scores[t, s] = Math.Clamp(3 + level + s / 2 + draws.Below(4) - draws.Below(2), 1, 9);
            }
        }
        return scores;
    }
}
