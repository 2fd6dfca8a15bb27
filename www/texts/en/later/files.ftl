### What is asked about a recording, and what can be wrong with one.

channel-title = Which channel is the pulse?
channel-text = { $file } has { $n } channels.
channel-label = Channel
channel-pictures = Five seconds of each channel
channel-unit = { $channel } ({ $unit })

error-file_big = { $file } and what came with it have { $mb } MB. This page opens at most { $most } MB.
error-file_field = { $file }, { $place ->
    [byte] byte
   *[line] line
} { $at }, { $field }: expected { $expected ->
    [whole_number] a whole number from { $low } to { $high }
    [number] a number
    [above_zero] a number above zero
    [other_than_low] another number than its lower end
   *[something] something
}, found “{ $found }”.
error-file_short = { $file } is cut short: its header says { $expected } bytes, and there are { $found }.
error-file_unsupported = { $file } cannot be read here: { $what ->
    [discontinuous] it is a recording with gaps. EDF and EDF+C, which have none, are read
    [bdf] it has 24-bit samples. EDF and EDF+, with 16 bits, are read
    [format] its samples are in a format that is not read. Formats 8, 16, 61, 80, 160 and 212 are
    [segments] it is a record of several segments. One segment can be opened by itself
    [frames] its signals have several samples in a frame
    [skew] its signals are shifted against each other
    [no_channel] it has no channel with samples
   *[unknown] it is neither a table of text, nor EDF, nor a WFDB record
} ({ $found }).
error-file_alone = { $file } keeps its samples in { $needs }. Choose or drop both together.
error-file_headless = { $file } is read with its header, the file that ends in .hea. Choose or drop both together.
error-file_several = { $file } and { $other } are two recordings. Open one at a time.
error-file_channel = { $file } has no channel “{ $found }”.
error-file_rate = { $file }: expected a sampling rate of { $low_hz } to { $high_hz } Hz, found { $found_hz } Hz.
error-file_length = { $file }: expected { $low } to { $high } samples, found { $found }.
error-file_missing = { $file }: { $found } of { $of } values are missing; at most one in { $limit_one_in } may be.
error-file_checksum = { $file }: the samples of { $channel } add up to { $found }, but its header says { $expected }. One of the files is damaged.
error-file_annotation = { $file }, byte { $at }: an annotation is cut short, or comes before the one that it follows.
error-file_range = { $file }: values from { $low } to { $high } do not fit into this file type.
error-file_notes = { $file }: { $found } notes are too many for a recording of this length.
