// Stands in where the program is built without its window.

#include <iostream>

#include "app/run.h"
#include "app/window.h"

namespace cupule::app {

int runWindow(int, char**, const std::string&, const std::string&, const std::string&)
{
    std::cerr << "This program was built without its window. \"cupule help\" lists the verbs.\n";
    return misunderstood;
}

} // namespace cupule::app
