@echo off
rem Starts Barm so that groups can come in from the network.
cd /d "%~dp0"
barm.exe serve --lan --browser
rem Whoever opened this with a double click must be able to read what went wrong.
if errorlevel 1 pause
