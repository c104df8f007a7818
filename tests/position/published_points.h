// Some published points of the National Grid, so that tests hold without the reference folder.
//
// Source: Ordnance Survey, OSTN15/OSGM15 developer test points; contains OS data, BSD 2-clause, (c) Crown copyright and database
// rights Land & Property Services 2016 and Ordnance Survey 2016.

#pragma once

namespace cupule::test {

struct Published {
    double latitude, longitude, easting, northing;
};
inline constexpr Published published[] = {{49.92226393730, -6.29977752014, 91492.146, 11318.804},
                                   {51.42754743020, -2.54407618349, 362269.991, 169978.690},
                                   {53.77911025760, -3.04045490691, 331534.564, 431920.794},
                                   {57.81351838410, -8.57854456076, 9587.909, 899448.996},
                                   {59.85409913890, -1.27486910356, 440725.073, 1107878.448}};

} // namespace cupule::test
