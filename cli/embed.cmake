# Writes a header that holds text files as strings: cmake -DTO=... "-DFILES=name=path;..." -P embed.cmake
set(body "#pragma once\n\n#include <string>\n\nnamespace rakewright {\n\n")
foreach(pair ${FILES})
    string(REGEX MATCH "^([a-z_]+)=(.*)$" found ${pair})
    set(name ${CMAKE_MATCH_1})
    file(READ ${CMAKE_MATCH_2} text)
    string(APPEND body "inline const std::string ${name} = R\"embedded(${text})embedded\";\n\n")
endforeach()
file(WRITE ${TO} "${body}}  // namespace rakewright\n")
