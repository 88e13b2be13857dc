global using static PressRun.Web.Shared.Wording.Texts;
