FROM mcr.microsoft.com/dotnet/sdk:10.0 AS build
WORKDIR /source
COPY . .
RUN dotnet publish src/PressRun.Web -c Release -o /app --nologo

FROM mcr.microsoft.com/dotnet/aspnet:10.0
# For the health check, and for TZ.
RUN apt-get update && apt-get install -y --no-install-recommends curl tzdata && rm -rf /var/lib/apt/lists/*
WORKDIR /app
COPY --from=build /app .
USER $APP_UID
EXPOSE 5080
ENTRYPOINT ["dotnet", "PressRun.Web.dll"]
