using PressRun.Cli;

return CommandLine.Run(args);
