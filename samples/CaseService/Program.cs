using CaseService;

Service.Build(args).Run();
