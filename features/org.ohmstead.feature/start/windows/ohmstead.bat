@echo off
rem Starts Ohmstead from its own folder. Without a word, or with a project's folder, the workbench opens; every other word is one of
rem the command line's. Needs Java 17 or newer.
setlocal EnableExtensions DisableDelayedExpansion
set "here=%~dp0"
set "java=java.exe"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "java=%JAVA_HOME%\bin\java.exe"
set "major=0"
for /f "tokens=3" %%v in ('cmd /c ""%java%" -version 2^>^&1" ^| findstr /i /c:"version"') do for /f "tokens=1 delims=.-" %%m in ("%%~v") do set "major=%%m"
if %major% LSS 17 (
    echo ohmstead: no Java 17 or newer was found. Install one or set JAVA_HOME. 1>&2
    exit /b 4
)
if not defined OHMSTEAD_DEMO_DATA set "OHMSTEAD_DEMO_DATA=%here%demo-data"
for %%f in ("%here%plugins\org.eclipse.equinox.launcher_*.jar") do set "launcher=%%f"
set "workbench="
if "%~1"=="" set "workbench=yes"
if "%~2"=="" if /i "%~x1"==".ohmstead" set "workbench=yes"
if "%~2"=="" if /i "%~nx1"=="project.json" set "workbench=yes"
rem A folder's name as it is completed ends with a slash, and such a path has no extension.
set "first=%~1"
if "%~2"=="" if /i "%first:~-10%"==".ohmstead\" set "workbench=yes"
if "%~2"=="" if /i "%first:~-10%"==".ohmstead/" set "workbench=yes"
rem Marked, so that the framework takes none of the words for one of its own options.
set "words="
:next
if "%~1"=="" goto start
set "word=%~1"
set "rest=%~1"
:slash
rem Java takes a quote after a backslash for a part of the word: each backslash at the end is doubled.
if not "%rest:~-1%"=="\" goto add
set "word=%word%\"
set "rest=%rest:~0,-1%"
if defined rest goto slash
:add
set words=%words% "=%word%"
shift
goto next
:start
rem The language: what Java's options ask for, else what the user chose; what is not spoken is said in English.
set "state=%OHMSTEAD_STATE%"
if not defined state set "state=%LOCALAPPDATA%\Ohmstead"
set "language="
set "spoken="
set "locale="
call :asked %OHMSTEAD_JAVA_OPTIONS%
if not defined language if exist "%state%\language" call :chosen
if defined language set "locale=-nl en"
if /i "%language:~0,2%"=="de" set "locale=-nl de"
rem Content of an update site that nobody signed is asked about; native code is allowed where Java would warn; a console is one only with
rem somebody before it.
set "asked=-Declipse.p2.unsignedPolicy=prompt"
if %major% GEQ 22 set "asked=%asked% --enable-native-access=ALL-UNNAMED -Djdk.console=java.base"
set "common=%asked% -XX:+UseSerialGC -Xshare:auto -Djava.awt.headless=true -Dohmstead.words=marked %spoken% %OHMSTEAD_JAVA_OPTIONS%"
if defined workbench goto workbench
"%java%" -XX:TieredStopAtLevel=1 %common% -jar "%launcher%" -nosplash %locale% -application org.ohmstead.cli.application -data @none %words%
exit /b %errorlevel%
:workbench
rem The second compiler steps in ten times later than it does by itself: the start needs the processor for other things.
set "late=-XX:Tier4InvocationThreshold=50000 -XX:Tier4MinInvocationThreshold=20000 -XX:Tier4CompileThreshold=150000 -XX:Tier4BackEdgeThreshold=400000 -XX:MetaspaceSize=160m"
"%java%" %late% %common% -jar "%launcher%" -nosplash %locale% -application org.ohmstead.app.workbench -data @noDefault %words%
rem So ends a workbench that is to be started anew.
if %errorlevel% equ 23 goto start
exit /b %errorlevel%
:asked
rem An equals sign parts two words.
if "%~1"=="" goto :eof
if "%~1"=="-Dohmstead.language" set "language=%~2"
shift
goto asked
:chosen
set /p "language=" <"%state%\language"
if not "%language%"=="en" if not "%language%"=="de" set "language="
if defined language set "spoken=-Dohmstead.language=%language%"
goto :eof
