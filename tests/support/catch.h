// The one include of the test framework.
#pragma once
#include <catch2/catch.hpp>
