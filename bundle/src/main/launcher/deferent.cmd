@echo off
rem Deferent, with the Java it runs on beside it. Without a word it opens the studio; with words it is the command line.
setlocal
set "home=%~dp0"
set "tune=-XX:TieredStopAtLevel=1"
if "%~1"=="" set "tune=-XX:+TieredCompilation"
if "%~1"=="studio" set "tune=-XX:+TieredCompilation"
if "%~1"=="film" set "tune=-XX:+TieredCompilation"
if "%~1"=="" (
    "%home%runtime\bin\java" %tune% @OPTIONS@ @CACHE@ -jar "%home%lib\deferent-start.jar" studio
) else (
    "%home%runtime\bin\java" %tune% @OPTIONS@ @CACHE@ -jar "%home%lib\deferent-start.jar" %*
)
exit /b %errorlevel%
