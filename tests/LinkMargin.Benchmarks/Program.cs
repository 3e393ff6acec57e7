using System.Diagnostics;
using System.Reflection;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using LinkMargin.Benchmarks;
using LinkMargin.Benchmarks.Mutations;
using LinkMargin.Engine.Scenes;

if (IsDebugBuild(typeof(Scene).Assembly) || IsDebugBuild(Assembly.GetExecutingAssembly()))
{
    Console.Error.WriteLine("A debug build says nothing about speed; run with -c Release.");
    return 2;
}

if (args is ["short"])
{
    ShortReport.Print(Console.Out);
    return 0;
}

if (args is ["drag"])
{
    Goal.Print(Console.Out, DragReport.Print(Console.Out));
    return 0;
}

if (args is ["runs"])
{
    Goal.Print(Console.Out, [RunsReport.Print(Console.Out)]);
    return 0;
}

if (args is ["memory"])
{
    MemoryReport.Print(Console.Out);
    return 0;
}

if (args is ["published"])
{
    Goal.Print(Console.Out, PublishedReport.Print(Console.Out));
    return 0;
}

if (args is ["table"] or ["table", "engine"])
{
    Goal.Print(Console.Out, TableReport.Print(Console.Out, withPrograms: args.Length == 1));
    return 0;
}

if (args is [YardstickProbe.Command, var frozen])
{
    YardstickProbe.Print(frozen, Console.Out);
    return 0;
}

if (args is ["table", "programs", var before, var now])
{
    Goal.Print(Console.Out, TableReport.PrintPrograms(Console.Out, before, now));
    return 0;
}

if (args is ["mutate", ..])
{
    return LongRun.Print(Console.Out, args[1..]);
}

// In one process: the build files of this repository are not made for a project that is generated elsewhere.
IConfig config = DefaultConfig.Instance.AddJob(Job.Default.WithToolchain(InProcessEmitToolchain.Instance));
BenchmarkSwitcher.FromAssembly(Assembly.GetExecutingAssembly()).Run(args, config);
return 0;

static bool IsDebugBuild(Assembly assembly) =>
    assembly.GetCustomAttribute<DebuggableAttribute>()?.IsJITOptimizerDisabled == true;
