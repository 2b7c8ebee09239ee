// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/file_words.h"

#include <sys/stat.h>

#include <cerrno>

namespace sheaf {

std::string words_for_errno(int error) {
  switch (error) {
    case ENOENT:
      return "no such file or folder";
    case ENOTDIR:
      return "a part of the path is no folder";
    case EACCES:
    case EPERM:
      return "no permission";
    case ELOOP:
      return "its symbolic links lead in a circle";
    case ENAMETOOLONG:
      return "the path is too long";
    case EMFILE:
    case ENFILE:
      return "too many files are open";
    case ENXIO:
      return "it is no regular file";
    case ENOSPC:
    case EDQUOT:
    case EFBIG:
      return "there is no room left";
    case EROFS:
      return "the disk is read-only";
    case EEXIST:
      return "something of that name stands there already";
    case EISDIR:
      return "it is a folder";
    case EIO:
      return "the disk reports an error";
    default:
      return "system error " + std::to_string(error);
  }
}

std::string words_for_kind(mode_t mode) {
  if (S_ISDIR(mode)) return "a folder";
  if (S_ISFIFO(mode)) return "a named pipe";
  if (S_ISSOCK(mode)) return "a socket";
  if (S_ISCHR(mode) || S_ISBLK(mode)) return "a device";
  return "something else";
}

}  // namespace sheaf
