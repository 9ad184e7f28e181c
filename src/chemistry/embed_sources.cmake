# Writes a C++ source that holds text files as raw string literals.
#   cmake -DROOT=DIR -DOUTPUT=FILE.cpp -DFILES=a;b -P embed_sources.cmake
# A literal ends at a line end before 12 kB, for compilers warn of literals above 64 kB.
set(code "// Generated from hazard-data/ by embed_sources.cmake.\n#include \"chemistry/embedded_sources.hpp\"\n\n")
string(APPEND code "#include <initializer_list>\n#include <string>\n#include <string_view>\n\nnamespace routeweigh {\n\n")
string(APPEND code "namespace {\n\nSourcePtr joined(const char* name, std::initializer_list<std::string_view> pieces) {\n"
       "    std::string text;\n    std::size_t size = 0;\n    for (const std::string_view piece : pieces)\n"
       "        size += piece.size();\n    text.reserve(size);\n    for (const std::string_view piece : pieces)\n"
       "        text += piece;\n    return make_source(name, std::move(text));\n}\n\n} // namespace\n\n")
string(APPEND code "std::vector<SourcePtr> embedded_sources() {\n    return {\n")
foreach(file IN LISTS FILES)
  file(READ "${file}" text)
  file(RELATIVE_PATH name "${ROOT}" "${file}")
  string(APPEND code "        joined(\"${name}\", {\n")
  string(LENGTH "${text}" rest)
  set(start 0)
  while(rest GREATER 0)
    string(SUBSTRING "${text}" ${start} 12000 piece)
    string(FIND "${piece}" "\n" line_end REVERSE)
    if(rest GREATER 12000 AND line_end GREATER 0)
      math(EXPR length "${line_end} + 1")
      string(SUBSTRING "${text}" ${start} ${length} piece)
    endif()
    string(LENGTH "${piece}" length)
    string(APPEND code "R\"=data=(${piece})=data=\",\n")
    math(EXPR start "${start} + ${length}")
    math(EXPR rest "${rest} - ${length}")
  endwhile()
  string(APPEND code "        }),\n")
endforeach()
string(APPEND code "    };\n}\n\n} // namespace routeweigh\n")
file(WRITE "${OUTPUT}" "${code}")
