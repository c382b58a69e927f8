FROM mcr.microsoft.com/dotnet/sdk:10.0 AS build
WORKDIR /source
COPY . .
RUN dotnet publish src/MenuLab.Web -c Release -o /app
# Made here, since the running user may not make it later.
RUN mkdir /data

# The full image, not a trimmed one: cultures and time zones are needed.
FROM mcr.microsoft.com/dotnet/aspnet:10.0
COPY --from=build /app /app
COPY --from=build --chown=$APP_UID:$APP_UID /data /data
ENV MENULAB_DATA=/data ASPNETCORE_HTTP_PORTS=8080
EXPOSE 8080
VOLUME /data
USER $APP_UID
# No HEALTHCHECK: the image has no client for one. Ask /health/ready from outside.
ENTRYPOINT ["dotnet", "/app/MenuLab.Web.dll"]
