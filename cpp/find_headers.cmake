# Eigen and Boost are headers only. The system's packages come first; where there are none, the
# header wheels that pip brings into the build (cmeel-eigen, boost-headers) serve as well.

function(ask_python statement answer)
    find_package(Python 3.11 COMPONENTS Interpreter REQUIRED)
    execute_process(COMMAND ${Python_EXECUTABLE} -c "${statement}"
                    OUTPUT_VARIABLE output OUTPUT_STRIP_TRAILING_WHITESPACE
                    RESULT_VARIABLE failed ERROR_QUIET)
    if(failed)
        message(FATAL_ERROR "Eigen 3.4 or 5 and Boost 1.74 or later are needed: install the system's "
                            "packages, or pip install cmeel-eigen boost-headers")
    endif()
    cmake_path(SET path NORMALIZE "${output}")
    set(${answer} "${path}" PARENT_SCOPE)
endfunction()

# Each major version of Eigen refuses requests for another.
macro(find_eigen)
    find_package(Eigen3 3.4 CONFIG QUIET ${ARGN})
    if(NOT Eigen3_FOUND)
        find_package(Eigen3 5 CONFIG QUIET ${ARGN})
    endif()
endmacro()

find_eigen()
if(NOT Eigen3_FOUND)
    ask_python("from importlib.metadata import distribution as d; \
print(d('cmeel-eigen').locate_file('cmeel.prefix'))" eigen_prefix)
    find_eigen(PATHS ${eigen_prefix} NO_DEFAULT_PATH)
endif()
if(NOT Eigen3_FOUND)
    message(FATAL_ERROR "Eigen 3.4 or 5 is needed")
endif()
message(STATUS "Eigen ${Eigen3_VERSION}: ${Eigen3_DIR}")

find_package(Boost 1.74 CONFIG QUIET)
if(NOT TARGET Boost::headers)
    ask_python("import boost_headers; print(boost_headers.get_include())" boost_include)
    add_library(Boost::headers INTERFACE IMPORTED)
    target_include_directories(Boost::headers INTERFACE ${boost_include})
endif()
get_target_property(boost_include Boost::headers INTERFACE_INCLUDE_DIRECTORIES)
message(STATUS "Boost headers: ${boost_include}")
