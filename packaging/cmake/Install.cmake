# Where things go, and a Debian package of them (cpack -G DEB in the build folder).
include(GNUInstallDirs)

install(TARGETS sumpwright RUNTIME DESTINATION "${CMAKE_INSTALL_BINDIR}")
set(desktop "${PROJECT_SOURCE_DIR}/packaging/desktop")
set(icons "${CMAKE_INSTALL_DATADIR}/icons/hicolor/scalable")
install(FILES "${desktop}/sumpwright.desktop" DESTINATION "${CMAKE_INSTALL_DATADIR}/applications")
install(FILES "${desktop}/sumpwright.metainfo.xml" DESTINATION "${CMAKE_INSTALL_DATADIR}/metainfo")
install(FILES "${desktop}/sumpwright-mime.xml" RENAME sumpwright.xml
        DESTINATION "${CMAKE_INSTALL_DATADIR}/mime/packages")
install(FILES resources/icons/sumpwright.svg DESTINATION "${icons}/apps")
install(FILES resources/icons/application-x-sumpwright-job+json.svg DESTINATION "${icons}/mimetypes")
install(FILES packaging/sumpwright.1 DESTINATION "${CMAKE_INSTALL_MANDIR}/man1")
install(DIRECTORY samples/ DESTINATION "${CMAKE_INSTALL_DATADIR}/sumpwright/samples"
        FILES_MATCHING PATTERN "*.sump.json")
install(DIRECTORY resources/schema/ DESTINATION "${CMAKE_INSTALL_DATADIR}/sumpwright/schema"
        FILES_MATCHING PATTERN "*.json")
install(DIRECTORY resources/manual/ DESTINATION "${CMAKE_INSTALL_DOCDIR}/manual"
        FILES_MATCHING PATTERN "*.md")
install(FILES README.md LICENSE DESTINATION "${CMAKE_INSTALL_DOCDIR}")

set(CPACK_PACKAGE_NAME sumpwright)
set(CPACK_PACKAGE_VENDOR "The Sumpwright authors")
set(CPACK_PACKAGE_CONTACT "The Sumpwright authors <sumpwright@localhost>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "${PROJECT_DESCRIPTION}")
set(CPACK_RESOURCE_FILE_LICENSE "${PROJECT_SOURCE_DIR}/LICENSE")
set(CPACK_GENERATOR DEB)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_DEPENDS "fonts-b612, fonts-dejavu-core")
include(CPack)
