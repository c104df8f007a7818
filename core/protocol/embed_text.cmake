# cmake -DTEXT=FILE -DOUT=FILE.cpp -P embed_text.cmake
# Writes a source file that defines builtInPackText() with the text of FILE in it, letter for letter.
file(READ "${TEXT}" content)
set(delimiter "cupule_pack")
string(FIND "${content}" ")${delimiter}\"" clash)
if(NOT clash EQUAL -1)
  message(FATAL_ERROR "${TEXT} holds the end mark of the raw text")
endif()
file(WRITE "${OUT}" "// Made from a protocol pack by embed_text.cmake.
#include \"core/protocol/built_in.h\"

namespace cupule {

std::string_view builtInPackText()
{
    static constexpr std::string_view text = R\"${delimiter}(${content})${delimiter}\";
    return text;
}

} // namespace cupule
")
