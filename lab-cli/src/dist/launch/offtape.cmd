@echo off
rem Starts Offtape with the Java machine that lies beside it.
rem OFFTAPE_JAVA_OPTS holds further options for that machine.
setlocal
set "short="
for %%o in (--help -h --version -V) do (
  if "%~1"=="%%o" set "short=-XX:TieredStopAtLevel=1 -XX:Tier3BackEdgeThreshold=4000"
  if "%~2"=="%%o" set "short=-XX:TieredStopAtLevel=1 -XX:Tier3BackEdgeThreshold=4000"
)
"%~dp0..\runtime\bin\java.exe" %short% %OFFTAPE_JAVA_OPTS% -m offtape/offtape.cli.Main %*
exit /b %ERRORLEVEL%
