using System.CommandLine;
using MenuLab.Benchmarks;

// One verb a measurement; each prints lines "figure: NAME VALUE UNIT" and nothing else that begins so.
var root = new RootCommand("Measurements of MenuLab. Run with: dotnet run -c Release --project tests/MenuLab.Benchmarks -- NAME");

var balance = new Command("balance", "Figures of a 10-line drink: time and heap.");
balance.SetAction(_ => BalanceMeasurement.Figures());
root.Add(balance);

var ranges = new Command("balance-ranges", "Figures, ranges and shares of a 10-line drink: time and heap.");
ranges.SetAction(_ => BalanceMeasurement.Ranges());
root.Add(ranges);

var accuracy = new Command("accuracy", "The largest error of each computation against its oracle.");
accuracy.SetAction(_ => AccuracyMeasurement.Run());
root.Add(accuracy);

return root.Parse(args).Invoke();
