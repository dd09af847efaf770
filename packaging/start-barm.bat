@echo off
rem Starts Barm in the browser of this computer.
cd /d "%~dp0"
barm.exe
rem Whoever opened this with a double click must be able to read what went wrong.
if errorlevel 1 pause
