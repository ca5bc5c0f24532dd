@echo off
rem Runs Understudy. Builds it first where there is no jar, or one older than its sources.
setlocal EnableExtensions DisableDelayedExpansion
for %%I in ("%~dp0..") do set "HOME_DIR=%%~fI"
set "READY=%HOME_DIR%\target\launcher"
set "JAR=%READY%\understudy.jar"
set "NEED_JDK=understudy needs a JDK, version 17 or later: install one, and set JAVA_HOME to its folder"

set "JAVA=java"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "JAVA=%JAVA_HOME%\bin\java.exe"
set "VERSION="
for /f "tokens=3" %%V in ('cmd /c ""%JAVA%" -version 2>&1" ^| findstr /c:" version "') do if not defined VERSION for /f "delims=." %%M in ("%%~V") do set "VERSION=%%M"
if not defined VERSION (
    echo %NEED_JDK% 1>&2
    exit /b 1
)
if %VERSION% LSS 17 (
    echo %NEED_JDK%; this one is version %VERSION% 1>&2
    exit /b 1
)

powershell -NoProfile -Command "$jar = Get-Item -LiteralPath $env:JAR -ErrorAction SilentlyContinue; if (-not $jar) { exit 1 }; $newer = Get-ChildItem -Recurse -LiteralPath ($env:HOME_DIR + '\src\main'), ($env:HOME_DIR + '\patterns'), ($env:HOME_DIR + '\pom.xml') | Where-Object { $_.LastWriteTimeUtc -gt $jar.LastWriteTimeUtc }; if ($newer) { exit 1 } else { exit 0 }"
if errorlevel 1 (
    call :build
    if errorlevel 1 exit /b 1
)

rem Short commands are over before the optimising compiler could pay for itself.
set "FLAGS=-XX:+UseSerialGC -XX:TieredStopAtLevel=1"
if /i "%~1"=="render" set "FLAGS=-XX:+UseSerialGC"
rem A pause of the collector would be heard: this one pauses for well under a millisecond, on memory taken beforehand.
if /i "%~1"=="play" set "FLAGS=-XX:+UseZGC -Xms256m -Xmx256m -XX:+AlwaysPreTouch"
if /i "%~1"=="trace" set "FLAGS=-XX:+UseZGC -Xms256m -Xmx256m -XX:+AlwaysPreTouch"
if /i "%~1"=="sweep" set "FLAGS=-XX:+UseZGC -Xms256m -Xmx256m -XX:+AlwaysPreTouch"
if /i "%~1"=="panel" set "FLAGS=-XX:+UseZGC -Xms256m -Xmx256m -XX:+AlwaysPreTouch"
"%JAVA%" %FLAGS% -Xshare:auto -jar "%JAR%" %*
exit /b %ERRORLEVEL%

:build
where mvn >nul 2>nul
if errorlevel 1 (
    echo understudy needs Maven to build itself: install it, and put its bin folder on the PATH 1>&2
    exit /b 1
)
echo building understudy, once; this takes a minute or two... 1>&2
rem A copy is built and its jar moved into place: two builds at once don't disturb each other.
set "WORK=%READY%\build.%RANDOM%%RANDOM%"
mkdir "%WORK%\src" || exit /b 1
xcopy /e /i /q "%HOME_DIR%\src\main" "%WORK%\src\main" >nul || exit /b 1
xcopy /e /i /q "%HOME_DIR%\patterns" "%WORK%\patterns" >nul || exit /b 1
copy /y "%HOME_DIR%\pom.xml" "%WORK%" >nul || exit /b 1
call mvn -q -B -f "%WORK%\pom.xml" -Dmaven.test.skip=true package >"%WORK%\log" 2>&1
if errorlevel 1 (
    type "%WORK%\log" 1>&2
    echo understudy could not be built; the reason is above 1>&2
    rmdir /s /q "%WORK%"
    exit /b 1
)
move /y "%WORK%\target\understudy.jar" "%JAR%" >nul || exit /b 1
rmdir /s /q "%WORK%"
exit /b 0
