// The families of figures; each lists its own in its own file. figure.cpp asks them all.

#pragma once

#include <span>

#include "core/training/dice.h"
#include "ui/figures/drawing.h"
#include "ui/figures/figure.h"

namespace cupule::ui {

struct FigureEntry {
    const char* id;
    const char* words; ///< what is to be seen; marked for translation in context "figures"
    void (*draw)(Drawing& drawing, const Depiction& spec, const Dice& dice);
};

std::span<const FigureEntry> leafFigures();      // leaves.cpp
std::span<const FigureEntry> shootFigures();     // shoots.cpp
std::span<const FigureEntry> twigFigures();      // twigs.cpp
std::span<const FigureEntry> fruitFigures();     // fruits.cpp
std::span<const FigureEntry> otherFlowerFigures(); // other_flowers.cpp
std::span<const FigureEntry> otherFruitFigures(); // other_fruits.cpp
std::span<const FigureEntry> leafGallFigures();  // leaf_galls.cpp
std::span<const FigureEntry> shootGallFigures(); // shoot_galls.cpp
std::span<const FigureEntry> crownFigures();     // crowns.cpp
std::span<const FigureEntry> blemishFigures();   // blemishes.cpp
std::span<const FigureEntry> harmFigures();      // harms.cpp
std::span<const FigureEntry> flowerFigures();    // flowers.cpp
std::span<const FigureEntry> oakGallFigures();   // oak_galls.cpp
std::span<const FigureEntry> barkFigures();      // barks.cpp
std::span<const FigureEntry> otherBarkFigures(); // other_barks.cpp
std::span<const FigureEntry> nutFigures();       // nuts.cpp
std::span<const FigureEntry> insectFigures();    // insects.cpp
std::span<const FigureEntry> gallPlateFigures(); // gall_plates.cpp
std::span<const FigureEntry> detailFigures();    // details.cpp
/// All of them.
std::span<const std::span<const FigureEntry>> figureFamilies(); // figure.cpp

} // namespace cupule::ui
