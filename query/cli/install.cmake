# SPDX-License-Identifier: GPL-2.0-or-later
# What `cmake --install` and the Debian package hold: both programs, the library of the sheets that come with them,
# manual pages, completions, the licence. The pages, the completions and the library are made by the programs
# themselves when they are installed. To take all of it away again: xargs rm < install_manifest.txt
include(GNUInstallDirs)

install(TARGETS sheaf sheafc RUNTIME)

set(made ${PROJECT_BINARY_DIR}/installed)
install(CODE "
  file(MAKE_DIRECTORY \"${made}\")
  foreach(program IN ITEMS \"$<TARGET_FILE:sheaf>\" \"$<TARGET_FILE:sheafc>\")
    get_filename_component(name \"\${program}\" NAME)
    foreach(what IN ITEMS man complete-bash complete-zsh complete-fish)
      execute_process(COMMAND \"\${program}\" --generate \${what} OUTPUT_FILE \"${made}/\${name}.\${what}\"
                      COMMAND_ERROR_IS_FATAL ANY)
    endforeach()
  endforeach()
  execute_process(COMMAND \"$<TARGET_FILE:sheafc>\" build --quiet --no-cache \"${PROJECT_SOURCE_DIR}/specs-yaml\"
                          --output \"${made}/orrindale.sheaf\" COMMAND_ERROR_IS_FATAL ANY)
")
install(FILES ${made}/orrindale.sheaf DESTINATION ${CMAKE_INSTALL_DATADIR}/sheaf)
install(FILES LICENSE DESTINATION ${CMAKE_INSTALL_DOCDIR} RENAME copyright)
foreach(program IN ITEMS sheaf sheafc)
  install(FILES ${made}/${program}.man DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 RENAME ${program}.1)
  install(FILES ${made}/${program}.complete-bash
          DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions RENAME ${program})
  install(FILES ${made}/${program}.complete-zsh
          DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/vendor-completions RENAME _${program})
  install(FILES ${made}/${program}.complete-fish
          DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d RENAME ${program}.fish)
endforeach()

# cpack -G DEB, in the build folder.
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_CONTACT "the maintainers of Sheaf <sheaf@example.org>")
set(CPACK_PACKAGE_DESCRIPTION "Sheaf is a reference for the workshop bench: torques, fluids, seals, settings and limits,
proved against published tables when they are compiled, and answered in milliseconds,
in the unit of the tool in hand, with who says so and what to beware of.
The figures that come with it are invented, to show how it works.")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION misc)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_RECOMMENDS "libreadline8, libssl3")  # loaded by name: the prompt's, and the page's by https
include(CPack)
