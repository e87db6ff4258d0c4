"""The record: what was issued, which files were written for it, what changed, the way back.

One record stands in a folder of papers, and every verb that writes papers there writes through it. It is a chain of
*entries*; an entry is a whole state of the folder: each paper with its sha256, kind, opening marks, the verb and the
issue that wrote it, the sheets that hold, and documents (what was printed, the job file, readings) by name. Entries
are written once and never changed.

    issued/entries/00007.json   the seventh entry; names the sha256 of the sixth
    issued/files/<sha256>       every paper, document and entry by its content
    issued/moving.json          only while papers are moved in: the entry to come, and what stood there before
    issued/set aside/           what was damaged, under the name it had
    issued/.lock                held by the process that writes, let go by the system when that process ends
    .written.json               the last entry once more, and which issue was told; stands outside, as a witness

**One commit.** All content is kept first, every replacement is tried, the log is written, the papers are moved one by
one, and then the entry appears by a rename. A failure on the way puts back what stood there; a kill is completed by
the next verb that writes, from the log, however often that one is killed too.

**Nothing is believed.** Everything read here is input: types are checked, no path leads out of the folder, every
content is held against its sha256. Whatever is damaged is taken from its second copy, else set aside by name, and the
house goes on with numbers that were never used.
"""
