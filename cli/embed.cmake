# Writes a header that holds a text file as a string: cmake -DFROM=... -DTO=... -DNAME=... -P embed.cmake
file(READ ${FROM} text)
file(WRITE ${TO} "#pragma once\n\n#include <string>\n\nnamespace rakewright {\n\ninline const std::string ${NAME} = R\"embedded(${text})embedded\";\n\n}  // namespace rakewright\n")
