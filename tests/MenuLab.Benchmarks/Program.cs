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

var fuzzed = new Option<int>("--rounds") { Description = "Lines to fuzz.", DefaultValueFactory = _ => 1_000_000 };
var seed = new Option<ulong>("--seed") { Description = "Seed of the fuzz.", DefaultValueFactory = _ => 20261125 };
var lines = new Command("lines", "The reader on fuzzed lines and on the sheet of typed texts.") { fuzzed, seed };
lines.SetAction(parsed => LinesMeasurement.Run(parsed.GetValue(fuzzed), parsed.GetValue(seed)));
root.Add(lines);

var startup = new Command("startup", "The published program from the command to the first page, on an empty and on an existing data folder.");
startup.SetAction(_ => StartupMeasurement.RunAsync());
root.Add(startup);

var edit = new Command("edit", "A change on the bench to the new figures on screen, in a real browser.");
edit.SetAction(_ => EditMeasurement.RunAsync());
root.Add(edit);

var roundUpdate = new Command("round-update", "A cell of a round of six with 12 lines to all its figures and its shared part.");
roundUpdate.SetAction(_ => RoundMeasurement.Run());
root.Add(roundUpdate);

var rounds = new Command("rounds", "Rounds by thumb in a real browser: taps to three variants, seconds to a note, a cell of six pours of 12 lines to its figures on screen.");
rounds.SetAction(_ => RoundsMeasurement.RunAsync());
root.Add(rounds);

var capture = new Command("capture", "40 entries of two devices while the network is off and the server is killed for a simulated 20 minutes.");
capture.SetAction(_ => CaptureMeasurement.RunAsync());
root.Add(capture);

var preps = new Command("preps", "A chain of preps 6 deep with 40 ingredients, worked out anew.");
preps.SetAction(_ => PrepsMeasurement.Chain());
root.Add(preps);

var recipes = new Option<int>("--recipes") { Description = "Random recipes.", DefaultValueFactory = _ => 20_000 };
var massBalance = new Command("mass-balance", "The worst mass balance over random preps.") { recipes };
massBalance.SetAction(parsed => PrepsMeasurement.MassBalance(parsed.GetValue(recipes)));
root.Add(massBalance);

var statistics = new Command("statistics", "Everything worked out when a tasting of 12 tasters, 6 samples and 10 questions is closed: time.");
statistics.SetAction(_ => StatisticsMeasurement.Run());
root.Add(statistics);

return await root.Parse(args).InvokeAsync();
