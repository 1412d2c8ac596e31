# A package for Debian 12: tools/package builds it with everything that belongs in it (`cpack -G DEB` alone, in a build folder that has the page).

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME evencount)
set(CPACK_PACKAGE_VENDOR "Evencount developers")
set(CPACK_PACKAGE_CONTACT "Evencount developers <evencount@localhost>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "workshop for designers of bead-woven jewellery")
set(CPACK_PACKAGE_DESCRIPTION
"Evencount works out how many beads close round a form, and how tightly;
keeps the chart of a band, turns it into the plan that a needle can follow,
and from that one plan writes row-by-row words, measures the thread, counts
the beads, draws the charts and prints the booklet, read back before it is
given out.
.
It holds a command line, a studio that is served to a browser on the same
computer, the demos, and the documents.")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)

# The library of rooms is for building on, and not in it.
set(CPACK_INSTALL_CMAKE_PROJECTS "${PROJECT_BINARY_DIR};evencount;program;/")
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_COMPONENTS_GROUPING ALL_COMPONENTS_IN_ONE)
set(CPACK_COMPONENTS_ALL program)

set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_RELEASE 1)
set(CPACK_DEBIAN_PACKAGE_SECTION graphics)
set(CPACK_DEBIAN_PACKAGE_PRIORITY optional)
set(CPACK_DEBIAN_COMPRESSION_TYPE xz)
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)
# The libraries are read off the program; the fonts are opened by name (src/page/font_files.cpp). A browser shows the studio, pdftotext is for
# `evencount read` of a printed booklet: the program runs neither, and does without.
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_DEPENDS "fonts-ebgaramond, fonts-lato, fonts-morisawa-bizud-gothic, fonts-morisawa-bizud-mincho")
set(CPACK_DEBIAN_PACKAGE_RECOMMENDS "firefox-esr | chromium | www-browser, xdg-utils")
set(CPACK_DEBIAN_PACKAGE_SUGGESTS "poppler-utils")

set(CPACK_PRE_BUILD_SCRIPTS ${CMAKE_CURRENT_SOURCE_DIR}/cmake/finish_package.cmake)
set(CPACK_OUTPUT_FILE_PREFIX ${PROJECT_BINARY_DIR})
include(CPack)
