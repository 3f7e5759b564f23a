#!/bin/sh
# check_symbols.sh BUILD_DIR: the engine computes and nothing else. Looks at what the compiled engine asks of the
# outside and refuses files, streams to the terminal, clocks, randomness from outside, the environment, the
# locale and anything that ends the program.
# Not looked for: std::terminate and __cxa_*, which every C++ object may name for exceptions.
set -eu
[ $# -eq 1 ] || { echo "usage: check_symbols.sh BUILD_DIR" >&2; exit 2; }
archives=$(find "$1/engine" -name '*.a' 2>/dev/null | sort)
[ -n "$archives" ] || { echo "$1/engine: no archive found; build first"; exit 1; }

# shellcheck disable=SC2086
nm -A -C --undefined-only $archives 2>/dev/null | awk '
  {
    symbol = $0
    if (!sub(/^.*: +[Uuw] /, "", symbol)) next
    name = symbol
    sub(/@.*/, "", name)
    why = ""
    if (name ~ /^(std::(__cxx11::)?)?(std::)?basic_(i|o)?fstream|basic_(i|o)?fstream<|basic_filebuf/) why = "files belong to files/ and store/"
    else if (name ~ /^(std::filesystem::|__wrap_)/) why = "files belong to files/ and store/"
    else if (name ~ /^(fopen|fopen64|freopen|freopen64|fdopen|open|open64|creat|openat|opendir|mkdir|unlink|remove|rename|tmpfile|mmap|mmap64)$/) why = "files belong to files/ and store/"
    else if (name ~ /^std::(w?cout|w?cerr|w?clog|w?cin)$/ || name ~ /^std::ios_base::Init::/) why = "only faces talk to the terminal"
    else if (name ~ /^(printf|vprintf|puts|putchar|putc|fputs|fputc|fprintf|vfprintf|fwrite|perror|__printf_chk|__fprintf_chk|__vprintf_chk|__vfprintf_chk|stdout|stderr|stdin)$/) why = "only faces talk to the terminal"
    else if (name ~ /^(getenv|secure_getenv|setenv|putenv|environ)$/) why = "no environment: pass the value in"
    else if (name ~ /^(exit|_exit|_Exit|quick_exit|at_quick_exit|abort|__assert_fail|raise|kill|longjmp|__longjmp_chk)$/) why = "a library never ends the program: return a Problem"
    else if (name ~ /^std::chrono::.*(system_clock|steady_clock|high_resolution_clock)::now/) why = "no clock: pass the time in"
    else if (name ~ /^(time|clock|clock_gettime|gettimeofday|ftime|localtime|localtime_r|gmtime|mktime|tzset|nanosleep|clock_nanosleep|usleep|sleep)$/) why = "no clock: pass the time in"
    else if (name ~ /^(rand|srand|rand_r|random|srandom|drand48|lrand48|getrandom|getentropy|arc4random)$/ || name ~ /^std::random_device/) why = "use base::RandomStream with a key"
    else if (name ~ /^std::locale::global/ || name ~ /^(setlocale|newlocale|uselocale|localeconv)$/) why = "no locale: the same text gives the same number everywhere"
    else if (name ~ /^(strtod|strtof|strtold|atof)$/) why = "depends on the locale: use std::from_chars"
    else if (name ~ /^(socket|connect|bind|listen|accept|getaddrinfo|system|popen|fork|execve|execvp)$/) why = "no network and no other program"
    if (why != "") {
      place = $0; sub(/: +[Uuw] .*$/, "", place); sub(/^.*\//, "", place)
      print place ": " symbol "   <- " why
      bad = 1
    }
  }
  END { exit bad }'
