#include "files/fold.h"

#include <array>
#include <cstddef>
#include <cstdint>

namespace voltwright::files {

namespace {

// Plain lower-case spelling of each letter from U+00C0 to U+024F and from U+1E00 to U+1EFF, by the canonical
// decomposition of the Unicode Character Database; letters without one (o with stroke, sharp s, thorn ...) by
// their usual spelling. '?' marks what is not such a letter and stays as it is.
constexpr std::string_view kLatin =
    "a a a a a a ae c e e e e i i i i d n o o o o o ? o u u u u y th ss a a a a a a ae c e e "
    "e e i i i i d n o o o o o ? o u u u u y th y a a a a a a c c c c c c c c d d d d e e e "
    "e e e e e e e g g g g g g g g h h h h i i i i i i i i i i ij ij j j k k k l l l l l l l "
    "l l l n n n n n n n n n o o o o o o oe oe r r r r r r s s s s s s s s t t t t t t u u u "
    "u u u u u u u u u w w y y y z z z z z z s ? b ? ? ? ? o c c d d ? ? ? e e e f f ? ? ? ? "
    "i k k ? ? ? ? ? ? o o ? ? ? ? ? ? ? ? ? ? ? ? ? u u ? ? y y ? ? ? ? ? ? ? ? ? ? ? ? ? ? "
    "? dz dz dz lj lj lj nj nj nj a a i i o o u u u u u u u u u u e a a a a ae ae g g g g k "
    "k o o o o ? ? j dz dz dz g g ? ? n n a a ae ae o o a a a a e e e e i i i i o o o o r r "
    "r r u u u u s s t t ? ? h h ? ? ? ? ? ? a a e e o o o o o o o o y y ? ? ? ? ? ? ? ? ? ? "
    "? ? ? ? ? ? u ? ? ? ? ? ? ? ? ? ? ? ";
constexpr std::string_view kLatinAdditional =
    "a a b b b b b b c c d d d d d d d d d d e e e e e e e e e e f f g g h h h h h h h h h h "
    "i i i i k k k k k k l l l l l l l l m m m m m m n n n n n n n n o o o o o o o o p p p p "
    "r r r r r r r r s s s s s s s s s s t t t t t t t t u u u u u u u u u u v v v v w w w w "
    "w w w w w w x x x x y y z z z z z z h t w y a s ? ? ss ? a a a a a a a a a a a a a a a "
    "a a a a a a a a a e e e e e e e e e e e e e e e e i i i i o o o o o o o o o o o o o o o "
    "o o o o o o o o o u u u u u u u u u u u u u u y y y y y y y y ? ? ? ? ? ? ";

template <std::size_t N>
constexpr std::array<std::string_view, N> words_of(std::string_view list) {
  std::array<std::string_view, N> words{};
  for (std::string_view& word : words) {
    const std::size_t end = list.find(' ');
    word = list.substr(0, end);
    list.remove_prefix(end + 1);
  }
  return words;
}

constexpr auto kLatinWords = words_of<0x24F - 0xC0 + 1>(kLatin);
constexpr auto kLatinAdditionalWords = words_of<0x1EFF - 0x1E00 + 1>(kLatinAdditional);

struct Letter {
  std::uint32_t code = 0;
  std::size_t bytes = 1;
};

/// Decodes one letter of two or three bytes; anything else counts as one byte of its own.
Letter letter_at(std::string_view text, std::size_t i) {
  const auto byte = [&](std::size_t k) {
    return static_cast<std::uint32_t>(static_cast<unsigned char>(text[k]));
  };
  const auto follows = [&](std::size_t k) { return k < text.size() && (byte(k) & 0xC0U) == 0x80U; };
  const std::uint32_t lead = byte(i);
  if (lead >= 0xC2U && lead <= 0xDFU && follows(i + 1)) {
    return {((lead & 0x1FU) << 6U) | (byte(i + 1) & 0x3FU), 2};
  }
  if (lead >= 0xE0U && lead <= 0xEFU && follows(i + 1) && follows(i + 2)) {
    return {((lead & 0x0FU) << 12U) | ((byte(i + 1) & 0x3FU) << 6U) | (byte(i + 2) & 0x3FU), 3};
  }
  return {lead, 1};
}

void append_two_bytes(std::string& out, std::uint32_t code) {
  out += static_cast<char>(0xC0U | (code >> 6U));
  out += static_cast<char>(0x80U | (code & 0x3FU));
}

void append_space(std::string& out) {
  if (!out.empty() && out.back() != ' ') out += ' ';
}

void append_letter(std::string& out, const Letter& letter, std::string_view bytes) {
  const std::uint32_t code = letter.code;
  std::string_view plain;
  if (code >= 0xC0U && code <= 0x24FU) plain = kLatinWords[code - 0xC0U];
  if (code >= 0x1E00U && code <= 0x1EFFU) plain = kLatinAdditionalWords[code - 0x1E00U];
  if (!plain.empty() && plain != "?") {
    out += plain;
  } else if (code == 0xA0U || (code >= 0x2010U && code <= 0x2015U)) {
    append_space(out);  // no-break space, dashes
  } else if ((code >= 0x300U && code <= 0x36FU) || (code >= 0x2BBU && code <= 0x2BCU) ||
             (code >= 0x2018U && code <= 0x2019U)) {
    return;  // combining accents, apostrophes
  } else if ((code >= 0x391U && code <= 0x3A9U) || (code >= 0x410U && code <= 0x42FU)) {
    append_two_bytes(out, code + 0x20U);  // Greek and Cyrillic capitals
  } else if (code >= 0x400U && code <= 0x40FU) {
    append_two_bytes(out, code + 0x50U);
  } else {
    out += bytes;
  }
}

}  // namespace

void fold_into(std::string_view text, std::string& out) {
  out.clear();
  for (std::size_t i = 0; i < text.size();) {
    const char c = text[i];
    if (static_cast<unsigned char>(c) < 0x80U) {
      ++i;
      if (c >= 'A' && c <= 'Z') {
        out += static_cast<char>(c - 'A' + 'a');
      } else if (c == ' ' || c == '-' || c == '_' || c == '.' || c == '\t') {
        append_space(out);
      } else if (c != '\'' && c != '`') {
        out += c;
      }
      continue;
    }
    const Letter letter = letter_at(text, i);
    if (letter.bytes == 1) {
      out += c;
    } else {
      append_letter(out, letter, text.substr(i, letter.bytes));
    }
    i += letter.bytes;
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
}

std::string fold(std::string_view text) {
  std::string out;
  fold_into(text, out);
  return out;
}

}  // namespace voltwright::files
