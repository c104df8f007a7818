// PROJ's own functions, from its shared library, which is loaded when the first position is worked out and not when the program
// starts: with all that it needs to fetch files from a network, which is never done here, it brings forty libraries along, a tenth
// of the time to the first paint.

#pragma once

#include <string>

#include <geodesic.h>
#include <proj.h>

namespace cupule::proj {

/// Under their own names.
struct Functions {
#define CUPULE_PROJ_FUNCTIONS(each)                                                                                             \
    each(geod_direct) each(geod_init) each(geod_inverse) each(geod_polygon_addpoint) each(geod_polygon_compute)                \
    each(geod_polygon_init) each(proj_context_create) each(proj_context_destroy) each(proj_context_errno)                      \
    each(proj_context_errno_string) each(proj_context_set_enable_network) each(proj_coord)                                     \
    each(proj_coordoperation_get_accuracy) each(proj_coordoperation_get_grid_used_count)                                       \
    each(proj_coordoperation_has_ballpark_transformation) each(proj_create) each(proj_create_from_database)                    \
    each(proj_create_operation_factory_context) each(proj_create_operations) each(proj_destroy) each(proj_errno_reset)         \
    each(proj_get_area_of_use) each(proj_get_name) each(proj_get_type) each(proj_info) each(proj_list_destroy)                 \
    each(proj_list_get) each(proj_list_get_count) each(proj_log_level) each(proj_operation_factory_context_destroy)            \
    each(proj_operation_factory_context_set_allow_ballpark_transformations)                                                    \
    each(proj_operation_factory_context_set_spatial_criterion) each(proj_pj_info) each(proj_trans) each(proj_trans_generic)
#define CUPULE_PROJ_MEMBER(name) decltype(&::name) name = nullptr;
    CUPULE_PROJ_FUNCTIONS(CUPULE_PROJ_MEMBER)
#undef CUPULE_PROJ_MEMBER
};

/// Loaded once, from any thread. Where the library is missing or older than the one built against, the program ends as it would
/// had it been linked: with the loader's message and exit code 127.
const Functions& library();

} // namespace cupule::proj
